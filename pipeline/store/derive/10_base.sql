-- Every entry with the boat that it is of, its file, and its place among all
-- entries (ord). A row that names no boat is of its trip's, else of its log's,
-- else of the only boat that the season knows.
CREATE OR REPLACE TEMP MACRO first_known(x, o) AS arg_min(x, o) FILTER (WHERE x IS NOT NULL);

-- The logs by name: of two that tell of the same, the first one's row counts, in whatever
-- order they were loaded.
CREATE OR REPLACE TEMP TABLE log_place AS
SELECT log_id, row_number() OVER (ORDER BY lower(name), folder, sha256, log_id) AS place FROM log;

-- A trip's label as all its spellings have it ("Trip 03" and "3" are one; pipeline/spelling), and
-- the shortest of them, by which it is shown.
CREATE OR REPLACE TEMP MACRO trip_as(label) AS
    regexp_replace(regexp_replace(lower(trim(label)), 'TRIP_WORD', '\1'), 'TRIP_ZEROS', '\1\2', 'g');
CREATE OR REPLACE TEMP TABLE trip_name AS
SELECT trip AS logged, first_value(trip) OVER (PARTITION BY trip_as(trip) ORDER BY length(trip), trip) AS trip
FROM (SELECT DISTINCT trip FROM entry WHERE trip IS NOT NULL);

-- Rows with the boat and the trip under the names that they are shown by.
CREATE OR REPLACE TEMP VIEW boated AS
SELECT e.* REPLACE (coalesce(n.boat, e.boat) AS boat, t.trip AS trip)
FROM entry e LEFT JOIN boat_name n ON n.logged = e.boat LEFT JOIN trip_name t ON t.logged = e.trip;

CREATE OR REPLACE TEMP TABLE boat_of_trip AS
SELECT log_id, trip, min(boat) AS boat FROM boated
WHERE boat IS NOT NULL AND trip IS NOT NULL
GROUP BY ALL HAVING count(DISTINCT boat) = 1;

CREATE OR REPLACE TEMP TABLE boat_of_log AS
SELECT log_id, min(boat) AS boat FROM boated WHERE boat IS NOT NULL
GROUP BY ALL HAVING count(DISTINCT boat) = 1;

CREATE OR REPLACE TEMP TABLE boat_of_label AS
SELECT trip, min(boat) AS boat FROM boat_of_trip
GROUP BY ALL HAVING count(DISTINCT boat) = 1;

CREATE OR REPLACE TEMP TABLE only_boat AS
SELECT min(boat) AS boat FROM (SELECT boat FROM boated UNION SELECT boat FROM log) WHERE boat IS NOT NULL
HAVING count(DISTINCT boat) = 1;

-- A row with up to 127 lines, stretches, strikes and fish that it tells of.
CREATE OR REPLACE TEMP VIEW placed_entry AS
SELECT e.*, p.place * 100000000000000 + e.sheet_no * 10000000000 + e."row" * 128 + coalesce(e.part, 0) AS ord
    FROM boated e JOIN log_place p USING (log_id);

CREATE OR REPLACE TEMP VIEW base AS
SELECT e.* EXCLUDE (boat), l.label AS file, l.folder,
    coalesce(e.boat, bt.boat, l.boat, bl.boat, bn.boat, (SELECT boat FROM only_boat), 'not logged') AS boat
FROM placed_entry e
JOIN log l USING (log_id)
LEFT JOIN boat_of_trip bt ON bt.log_id = e.log_id AND bt.trip = e.trip
LEFT JOIN boat_of_log bl ON bl.log_id = e.log_id
LEFT JOIN boat_of_label bn ON bn.trip = e.trip;
