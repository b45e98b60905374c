-- Legs without a label: those of one boat less than the trip gap apart, or of one row, are one
-- trip, and of the trip whose labelled legs stand in the same run of legs.
CREATE OR REPLACE TEMP TABLE run AS
WITH spaced AS (
    SELECT leg_id, boat, trip_key, start_at, end_at,
        max(end_at) OVER before AS last_end,
        ord // 128 IS NOT DISTINCT FROM lag(ord // 128) OVER (PARTITION BY boat ORDER BY start_at, leg_id) AS same_row
    FROM leg_made WHERE start_at IS NOT NULL
    WINDOW before AS (PARTITION BY boat ORDER BY start_at, leg_id ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING)
)
SELECT *, sum(CASE WHEN last_end IS NULL OR NOT same_row AND start_at >= last_end + to_seconds((SELECT value::BIGINT
    FROM setting WHERE name = 'trip_gap_s'))
        THEN 1 ELSE 0 END) OVER (PARTITION BY boat ORDER BY start_at, leg_id) AS run
FROM spaced;

CREATE OR REPLACE TEMP TABLE run_leg AS
SELECT leg_id, boat, start_at, end_at, run, coalesce(trip_key,
    last_value(trip_key IGNORE NULLS) OVER (PARTITION BY boat, run
        ORDER BY start_at, leg_id ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW),
    first_value(trip_key IGNORE NULLS) OVER (PARTITION BY boat, run
        ORDER BY start_at, leg_id ROWS BETWEEN CURRENT ROW AND UNBOUNDED FOLLOWING)
    ) AS trip_key
FROM run;

-- A run with no label anywhere takes the only label that its day has elsewhere.
CREATE OR REPLACE TEMP TABLE day_label AS
SELECT boat, date, min(trip_key) AS trip_key FROM labelled
WHERE trip_key IS NOT NULL AND date IS NOT NULL
GROUP BY ALL HAVING count(DISTINCT trip_key) = 1;

CREATE OR REPLACE TEMP TABLE run_label AS
SELECT r.boat, r.run, d.trip_key
FROM (SELECT boat, run, min(start_at)::DATE AS date FROM run_leg GROUP BY ALL HAVING count(trip_key) = 0) r
JOIN day_label d USING (boat, date);

-- The day of one run alone.
CREATE OR REPLACE TEMP TABLE day_run AS
SELECT boat, start_at::DATE AS date, min(run) AS run, min(trip_key) AS trip_key FROM run_leg
GROUP BY ALL HAVING count(DISTINCT run) = 1 AND count(DISTINCT trip_key) <= 1;

-- A leg with neither a start nor a trip's label is of its day's trip, or a trip of its own.
CREATE OR REPLACE TEMP TABLE leg_trip AS
SELECT m.leg_id, coalesce(m.trip_key, r.trip_key, rl.trip_key,
    CASE WHEN r.run IS NOT NULL THEN 'R|' || m.boat || '|' || r.run END,
    dl.trip_key, dr.trip_key,
    CASE WHEN dr.run IS NOT NULL AND m.start_at IS NULL THEN 'R|' || m.boat || '|' || dr.run END,
    CASE WHEN m.on_date IS NOT NULL THEN 'D|' || m.boat || '|' || m.on_date ELSE 'O|' || m.ord END) AS trip_key
FROM leg_made m
LEFT JOIN run_leg r USING (leg_id)
LEFT JOIN run_label rl ON rl.boat = r.boat AND rl.run = r.run
LEFT JOIN day_label dl ON dl.boat = m.boat AND dl.date = m.on_date
LEFT JOIN day_run dr ON dr.boat = m.boat AND dr.date = m.on_date AND m.start_at IS NULL;

-- The days that each trip's legs cover.
CREATE OR REPLACE TEMP TABLE trip_span AS
SELECT t.trip_key, m.boat, min(coalesce(m.start_at::DATE, m.on_date)) AS first_day,
    max(coalesce(m.end_at::DATE, m.on_date)) AS last_day,
    min(m.start_at) AS first_at
FROM leg_trip t JOIN leg_made m USING (leg_id) GROUP BY ALL;

-- Rows of a trips sheet without a label: the trip of their day, else a trip of their own.
CREATE OR REPLACE TEMP TABLE trip_named AS
SELECT r.ord, coalesce(any_value(r.trip_key), CASE WHEN count(DISTINCT s.trip_key) = 1 THEN min(s.trip_key) END,
    'D|' || any_value(r.boat) || '|' || any_value(r.date), 'O|' || r.ord) AS trip_key
FROM trip_row r
LEFT JOIN trip_span s ON r.trip_key IS NULL AND s.boat = r.boat
    AND r.date BETWEEN s.first_day AND s.last_day
    AND (r.depart_at IS NULL OR s.first_at IS NULL OR s.first_at >= r.depart_at)
    AND (r.return_at IS NULL OR s.first_at IS NULL OR s.first_at <= r.return_at)
GROUP BY r.ord;
