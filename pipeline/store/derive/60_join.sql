-- Each strike's leg: a flat row's own; else by the leg's name in the trip; else
-- the leg that holds its instant, the day after included for a leg past
-- midnight; else the only leg of its trip.
CREATE OR REPLACE TEMP TABLE hit AS
SELECT s.*, row_number() OVER (ORDER BY s.ord, s.sub) AS hit_id FROM struck s WHERE s.ord NOT IN (SELECT ord FROM struck_again);

CREATE OR REPLACE TEMP TABLE timed_leg AS
SELECT m.leg_id, m.boat, t.trip_key, m.leg, m.on_date, m.start_at, m.hours,
    m.start_at + to_microseconds((m.hours * 3600000000)::BIGINT) AS end_at
FROM leg_made m JOIN leg_trip t USING (leg_id);

CREATE OR REPLACE TEMP TABLE own_leg AS
SELECT h.hit_id, m.leg_id FROM hit h JOIN counted c ON c.ord = h.ord JOIN leg_made m USING (leg_key) WHERE h.origin = 'flat';

CREATE OR REPLACE TEMP TABLE named_leg AS
SELECT hit_id, min(leg_id) AS leg_id FROM hit h JOIN timed_leg t
    ON t.trip_key = h.trip_key AND lower(t.leg) = lower(h.leg)
GROUP BY hit_id HAVING count(*) = 1;

CREATE OR REPLACE TEMP TABLE held AS
SELECT hit_id, arg_min(leg_id, rank) AS leg_id, arg_min(at, rank) AS at FROM (
    SELECT h.hit_id, t.leg_id, d.at,
        -- inside before on the edge, the logged day before the next
        (CASE WHEN d.at < t.end_at THEN 0 ELSE 1 END) * 1000000 + d.later * 100000 + t.leg_id / 100000.0 AS rank
    FROM hit h
    JOIN timed_leg t ON t.boat = h.boat AND t.start_at IS NOT NULL AND (h.trip_key IS NULL OR t.trip_key = h.trip_key OR t.trip_key NOT LIKE 'L|%')
    CROSS JOIN LATERAL (
        SELECT coalesce(h.date, t.start_at::DATE) + to_seconds(h.time_s) + to_days(later) AS at, later FROM (VALUES (0), (1)) v(later)
    ) d
    WHERE h.time_s IS NOT NULL AND (h.date IS NOT NULL OR h.trip_key IS NOT NULL) AND d.at BETWEEN t.start_at AND t.end_at
) GROUP BY hit_id;

-- The trip of a strike that names none: its leg's, else the only trip of its
-- day, else a trip of that day alone.
CREATE OR REPLACE TEMP TABLE day_trip AS
SELECT h.hit_id, min(s.trip_key) AS trip_key
FROM hit h JOIN trip_span s ON s.boat = h.boat AND h.date BETWEEN s.first_day AND s.last_day
WHERE h.trip_key IS NULL
GROUP BY ALL HAVING count(DISTINCT s.trip_key) = 1;

CREATE OR REPLACE TEMP TABLE day_label_trip AS
SELECT h.hit_id, d.trip_key FROM hit h JOIN day_label d ON d.boat = h.boat AND d.date = h.date WHERE h.trip_key IS NULL;

CREATE OR REPLACE TEMP TABLE placed AS
WITH l AS (
    SELECT h.hit_id, coalesce(o.leg_id, n.leg_id, g.leg_id) AS leg_id, g.at AS held_at
    FROM hit h LEFT JOIN own_leg o USING (hit_id) LEFT JOIN named_leg n USING (hit_id) LEFT JOIN held g USING (hit_id)
), t AS (
    SELECT h.hit_id, l.leg_id, l.held_at, coalesce(lt.trip_key, h.trip_key, dt.trip_key, dl.trip_key,
        'D|' || h.boat || '|' || h.date) AS trip_key
    FROM hit h JOIN l USING (hit_id)
    LEFT JOIN leg_trip lt ON lt.leg_id = l.leg_id
    LEFT JOIN day_trip dt USING (hit_id) LEFT JOIN day_label_trip dl USING (hit_id)
), only_leg AS (
    SELECT trip_key, min(leg_id) AS leg_id FROM leg_trip GROUP BY ALL HAVING count(*) = 1
)
SELECT h.* EXCLUDE (trip_key), t.trip_key, coalesce(t.leg_id, ol.leg_id) AS leg_id, t.held_at
FROM hit h JOIN t USING (hit_id)
LEFT JOIN only_leg ol ON ol.trip_key = t.trip_key AND h.leg IS NULL AND h.time_s IS NULL;
