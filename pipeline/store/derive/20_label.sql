CREATE OR REPLACE TEMP TABLE dated_label AS
SELECT DISTINCT log_id, folder, boat, trip, date FROM base WHERE trip IS NOT NULL AND date IS NOT NULL;

-- A trip's label may be used again in another season: rows of one label more
-- than ten days apart are different outings.
CREATE OR REPLACE TEMP TABLE label_day AS
SELECT boat, trip, date, sum(fresh) OVER (PARTITION BY boat, trip ORDER BY date) AS outing
FROM (
    SELECT boat, trip, date,
        CASE WHEN date - lag(date) OVER (PARTITION BY boat, trip ORDER BY date) > 10 THEN 1 ELSE 0 END AS fresh
    FROM (SELECT DISTINCT boat, trip, date FROM dated_label)
);

-- A row with a label and no date is of the outing that its log knows.
CREATE OR REPLACE TEMP TABLE label_log AS
SELECT b.log_id, b.boat, b.trip, min(d.outing) AS outing
FROM dated_label b JOIN label_day d USING (boat, trip, date)
GROUP BY ALL HAVING count(DISTINCT d.outing) = 1;

-- Or of the outing that the logs of its folder know: next year's labels begin at 1 again.
CREATE OR REPLACE TEMP TABLE label_folder AS
SELECT b.folder, b.boat, b.trip, min(d.outing) AS outing
FROM dated_label b JOIN label_day d USING (boat, trip, date) WHERE b.folder <> ''
GROUP BY ALL HAVING count(DISTINCT d.outing) = 1;

CREATE OR REPLACE TEMP TABLE label_any AS
SELECT boat, trip, min(outing) AS outing, count(DISTINCT outing) AS outings FROM label_day GROUP BY ALL;

-- The rows, with the trip that each is of. KIND is TABLE or VIEW: see runSteps.
CREATE OR REPLACE TEMP KIND labelled AS
SELECT b.*, CASE
    WHEN b.trip IS NULL THEN NULL
    WHEN b.date IS NOT NULL THEN 'L|' || b.boat || '|' || b.trip || '|' || d.outing
    WHEN ll.outing IS NOT NULL THEN 'L|' || b.boat || '|' || b.trip || '|' || ll.outing
    WHEN lf.outing IS NOT NULL THEN 'L|' || b.boat || '|' || b.trip || '|' || lf.outing
    WHEN la.outings = 1 THEN 'L|' || b.boat || '|' || b.trip || '|' || la.outing
    WHEN la.outings IS NULL THEN 'L|' || b.boat || '|' || b.trip || '|0'
    END AS trip_key
FROM base b
LEFT JOIN label_day d ON d.boat = b.boat AND d.trip = b.trip AND d.date = b.date
LEFT JOIN label_log ll ON ll.log_id = b.log_id AND ll.boat = b.boat AND ll.trip = b.trip
LEFT JOIN label_folder lf ON lf.folder = b.folder AND lf.boat = b.boat AND lf.trip = b.trip
LEFT JOIN label_any la ON la.boat = b.boat AND la.trip = b.trip;

-- What the trips sheets say of each labelled trip.
CREATE OR REPLACE TEMP TABLE trip_row AS
SELECT ord, boat, trip, trip_key, date,
    date + to_seconds(depart_s) AS depart_at, date + to_seconds(return_s) AS return_at,
    captain, port, anglers, zone, notes, log_id, file, sheet, "row"
FROM labelled WHERE kind = 'trips';

CREATE OR REPLACE TEMP TABLE trip_day AS
SELECT trip_key, min(date) AS date, min(depart_at) AS depart_at, max(return_at) AS return_at
FROM trip_row WHERE trip_key IS NOT NULL AND date IS NOT NULL
GROUP BY ALL HAVING count(DISTINCT date) = 1;
