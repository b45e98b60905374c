-- What a log's rows tell, for finding them again in another log: kind is that of the
-- table, hours being hours whether strikes stand beside them or not. A row without a date
-- is of its label's day, in its own log or in one of the same folder.
CREATE OR REPLACE TEMP VIEW label_day_of_log AS
SELECT log_id, trip, min(date) AS day FROM entry WHERE trip IS NOT NULL AND date IS NOT NULL
GROUP BY log_id, trip HAVING max(date) - min(date) <= 2;
CREATE OR REPLACE TEMP VIEW label_day_of_folder AS
SELECT l.folder, d.trip, min(d.day) AS day FROM label_day_of_log d JOIN log l USING (log_id) WHERE l.folder <> ''
GROUP BY l.folder, d.trip HAVING max(d.day) - min(d.day) <= 2;
CREATE OR REPLACE TEMP VIEW boat_of_rows AS
SELECT e.log_id, min(coalesce(b.boat, e.boat)) AS boat FROM entry e LEFT JOIN boat_name b ON b.logged = e.boat
    WHERE e.boat IS NOT NULL
GROUP BY e.log_id HAVING count(DISTINCT coalesce(b.boat, e.boat)) = 1;
CREATE OR REPLACE TEMP VIEW told_row AS
WITH known AS (
    SELECT e.log_id, CASE WHEN e.kind IN ('legs', 'flat') THEN 'hours' ELSE e.kind END AS kind,
        coalesce(n.boat, e.boat, r.boat, l.boat) AS boat, coalesce(e.date, o.day, f.day) AS day,
        e.date IS NULL AND o.day IS NULL AND e.trip IS NOT NULL AS leans,
        CASE WHEN e.kind = 'trips' THEN e.depart_s ELSE coalesce(e.start_s, e.time_s) END AS at_s,
        e.start_s, coalesce(e.end_s, e.start_s + e.duration_s::BIGINT) AS until_s, e.duration_s, e.speed_kn, e.trip,
            e.leg, coalesce(e.line, e.strike) AS line,
        hash(e.date, VALUE_COLUMNS) AS whole
    FROM entry e JOIN log l ON l.log_id = e.log_id
    LEFT JOIN boat_name n ON n.logged = e.boat LEFT JOIN boat_of_rows r ON r.log_id = e.log_id
    LEFT JOIN label_day_of_log o ON e.date IS NULL AND o.log_id = e.log_id AND o.trip = e.trip
    LEFT JOIN label_day_of_folder f ON e.date IS NULL AND f.folder = l.folder AND f.trip = e.trip
)
SELECT *, hash(kind, day, at_s, lower(line),
    CASE WHEN day IS NULL OR at_s IS NULL THEN lower(trip) END, CASE WHEN at_s IS NULL THEN lower(leg) END) AS key
FROM known;
-- What a row says but for its day.
CREATE OR REPLACE TEMP VIEW print_of_row AS
SELECT e.log_id, hash(CASE WHEN e.kind IN ('legs', 'flat') THEN 'hours' ELSE e.kind END, VALUE_COLUMNS) AS print
    FROM entry e
