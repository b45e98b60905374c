-- Each strike's leg: that of its row, where it has one; else by the leg's name in the trip; else
-- the leg that holds its instant, the day after included for a leg past
-- midnight; else the only leg of its trip.
CREATE OR REPLACE TEMP TABLE hit AS
SELECT s.*, row_number() OVER (ORDER BY s.ord, s.sub) AS hit_id FROM struck s;

CREATE OR REPLACE TEMP TABLE timed_leg AS
SELECT m.leg_id, m.boat, t.trip_key, m.leg, m.on_date, m.start_at, m.hours, m.end_at, p.log_id, o.folder
FROM leg_made m JOIN leg_trip t USING (leg_id) JOIN log_place p ON p.place = m.ord // 100000000000000
    JOIN log o USING (log_id);

-- What a row tells in words was on the row's stretch, where it has but one. Tables side by side
-- have rows of one number: ord without its part is a row of one table.
CREATE OR REPLACE TEMP TABLE row_leg AS
SELECT ord // 128 AS told_by, min(leg_id) AS leg_id FROM counted
GROUP BY ALL HAVING count(DISTINCT leg_id) = 1;

CREATE OR REPLACE TEMP TABLE own_leg AS
SELECT h.hit_id, c.leg_id FROM hit h JOIN counted c ON c.ord = h.ord WHERE h.origin = 'flat'
UNION ALL
SELECT h.hit_id, r.leg_id FROM hit h JOIN row_leg r ON r.told_by = h.ord // 128
WHERE h.origin <> 'flat' AND h.time_s IS NULL;

-- Legs numbered through a season, for strikes and fish that name nothing else: those of the same log,
-- else of the logs of its folder.
CREATE OR REPLACE TEMP TABLE numbered_leg AS
SELECT h.hit_id, t.leg_id, t.log_id = h.log_id AS own, max(t.log_id = h.log_id) OVER (PARTITION BY h.hit_id) AS any_own
FROM hit h JOIN log o ON o.log_id = h.log_id JOIN timed_leg t ON lower(t.leg) = lower(h.leg)
    AND (t.log_id = o.log_id OR t.folder = o.folder)
WHERE h.trip_key IS NULL AND h.date IS NULL;

-- A leg's name is of the trip, or of the day where the strike names no trip.
CREATE OR REPLACE TEMP TABLE named_leg AS
SELECT hit_id, min(leg_id) AS leg_id FROM (
    SELECT h.hit_id, t.leg_id FROM hit h JOIN timed_leg t ON t.trip_key = h.trip_key AND lower(t.leg) = lower(h.leg)
    UNION ALL
    SELECT h.hit_id, t.leg_id FROM hit h JOIN timed_leg t ON t.boat = h.boat AND t.on_date = h.date
        AND lower(t.leg) = lower(h.leg)
    WHERE h.trip_key IS NULL
    UNION ALL
    SELECT hit_id, leg_id FROM numbered_leg WHERE own = any_own
) GROUP BY hit_id HAVING count(*) = 1;

CREATE OR REPLACE TEMP TABLE told_leg AS
SELECT h.hit_id, coalesce(o.leg_id, n.leg_id) AS leg_id
FROM hit h LEFT JOIN own_leg o USING (hit_id) LEFT JOIN named_leg n USING (hit_id)
WHERE coalesce(o.leg_id, n.leg_id) IS NOT NULL;

-- A sheet of a row a bite writes hours without clock times, lines and speed on the row of a stretch's first bite:
-- the bites beneath are of that stretch, until a row has hours, lines or a speed of its own.
CREATE OR REPLACE TEMP TABLE beneath_leg AS
WITH f AS (
    SELECT l.ord, coalesce(l.duration_s::DOUBLE, l.start_s, l.end_s, l.speed_kn, l.lines_out) IS NOT NULL AS begins,
        if(m.start_at IS NULL AND l.ord IN (SELECT ord FROM hit WHERE outcome IS NOT NULL), c.leg_id, NULL) AS leg_id,
        l.log_id, l.sheet, l.trip_key, l.date, l."row", l.part
    FROM labelled l LEFT JOIN counted c USING (ord) LEFT JOIN leg_made m USING (leg_id) WHERE l.kind = 'flat'
        AND l.ord NOT IN (SELECT ord FROM keyed WHERE key_word = 'row|' || row_ord AND ord <> row_ord) -- a row's lines
), b AS (
    SELECT ord, begins, last_value(if(begins, {leg_id: leg_id}, NULL) IGNORE NULLS) OVER (
        PARTITION BY log_id, sheet, trip_key, date ORDER BY "row", part NULLS FIRST) AS above
    FROM f
)
SELECT h.hit_id, b.above.leg_id AS leg_id FROM hit h JOIN b USING (ord)
WHERE h.origin = 'flat' AND h.leg IS NULL AND NOT b.begins AND b.above.leg_id IS NOT NULL;

-- Instants at which a strike may have been: its clock on its day or the day
-- after; without a date, on the days of its trip's legs.
CREATE OR REPLACE TEMP TABLE leg_day AS
SELECT leg_id, boat, trip_key, start_at, end_at,
    unnest(generate_series(start_at::DATE::TIMESTAMP, end_at, INTERVAL 1 DAY))::DATE AS day
FROM timed_leg WHERE start_at IS NOT NULL;

CREATE OR REPLACE TEMP TABLE candidate AS
SELECT h.hit_id, h.boat, h.trip_key, later, h.date + to_seconds(h.time_s) + to_days(later) AS at
FROM hit h, (VALUES (0), (1)) v(later)
WHERE h.time_s IS NOT NULL AND h.date IS NOT NULL
UNION ALL
SELECT h.hit_id, h.boat, h.trip_key, 0, d.day + to_seconds(h.time_s)
FROM hit h JOIN leg_day d ON d.trip_key = h.trip_key
WHERE h.time_s IS NOT NULL AND h.date IS NULL;

CREATE OR REPLACE TEMP TABLE held AS
SELECT hit_id, arg_min(leg_id, rank) AS leg_id, arg_min(at, rank) AS at FROM (
    SELECT c.hit_id, d.leg_id, c.at,
        -- the logged day before the next (a strike at the very end of today's leg is
        -- not of tomorrow's), inside before on the edge, the earlier leg before the later
        c.later * 2000000000000 + CASE WHEN c.at < d.end_at THEN 0 ELSE 1000000000000 END + d.leg_id AS rank
    FROM candidate c JOIN leg_day d ON d.boat = c.boat AND d.day = c.at::DATE
    LEFT JOIN told_leg k ON k.hit_id = c.hit_id
    WHERE c.at BETWEEN d.start_at AND d.end_at
      AND (c.trip_key IS NULL OR d.trip_key = c.trip_key OR d.trip_key NOT LIKE 'L|%')
      -- where the leg is told, the instant is one of that leg: a row of a leg past
      -- midnight has the day on which the leg began
      AND (k.leg_id IS NULL OR k.leg_id = d.leg_id)
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

-- Stretches whose end nobody wrote down are no effort, but the boat ran at their speed
-- until the next one began.
CREATE OR REPLACE TEMP TABLE open_stretch AS
SELECT hit_id, first(speed_kn ORDER BY start_s DESC) AS speed_kn FROM (
    SELECT h.hit_id, l.start_s, CASE WHEN l.end_s IS NULL
        AND l.duration_s IS NULL THEN round(l.speed_kn, 1) END AS speed_kn
    FROM hit h JOIN labelled l ON l.kind IN ('legs', 'flat') AND l.start_s <= h.time_s AND l.boat = h.boat
        AND (l.trip_key = h.trip_key OR h.trip_key IS NULL AND l.date = h.date)
    WHERE h.origin <> 'flat'
    UNION ALL
    -- a strike without a time, of a trip or day with no other stretch
    SELECT h.hit_id, l.start_s, CASE WHEN l.end_s IS NULL
        AND l.duration_s IS NULL THEN round(l.speed_kn, 1) END AS speed_kn
    FROM hit h JOIN (SELECT boat, trip_key, date, any_value(start_s) AS start_s, any_value(end_s) AS end_s,
        any_value(duration_s) AS duration_s,
            any_value(speed_kn) AS speed_kn
        FROM labelled WHERE kind = 'legs' GROUP BY boat, trip_key, date HAVING count(*) = 1) l
        ON l.boat = h.boat AND (l.trip_key = h.trip_key AND (h.date IS NULL OR l.date = h.date) OR h.trip_key IS NULL
            AND l.date = h.date)
    WHERE h.origin <> 'flat' AND h.time_s IS NULL
) GROUP BY hit_id;

-- What a row counts that is a stretch of its own, with its speed and lines, whose times or end nobody
-- wrote down, was on no other.
CREATE OR REPLACE TEMP TABLE half_row AS
SELECT ord FROM labelled WHERE kind = 'flat' AND end_s IS NULL AND duration_s IS NULL AND (start_s IS NOT NULL
    OR speed_kn IS NOT NULL AND lines_out IS NOT NULL
        AND coalesce(strikes_n, hooked_n, landed_n, released_n, lost_n, missed_n) IS NOT NULL);

CREATE OR REPLACE TEMP TABLE placed AS
WITH l AS (
    SELECT h.hit_id, coalesce(k.leg_id, g.leg_id, b.leg_id) AS leg_id, g.at AS held_at
    FROM hit h LEFT JOIN told_leg k USING (hit_id) LEFT JOIN held g USING (hit_id)
    LEFT JOIN beneath_leg b USING (hit_id)
), t AS (
    SELECT h.hit_id, l.leg_id, l.held_at, coalesce(lt.trip_key, h.trip_key, dt.trip_key, dl.trip_key,
        'D|' || h.boat || '|' || h.date) AS trip_key
    FROM hit h JOIN l USING (hit_id)
    LEFT JOIN leg_trip lt ON lt.leg_id = l.leg_id
    LEFT JOIN day_trip dt USING (hit_id) LEFT JOIN day_label_trip dl USING (hit_id)
), only_leg AS (
    -- of one without a clock, whatever the strike's; else a strike with one was not on it
    SELECT trip_key, min(leg_id) AS leg_id, any_value(start_at) IS NULL AS untimed FROM timed_leg
    GROUP BY trip_key HAVING count(*) = 1
)
SELECT h.* EXCLUDE (trip_key) REPLACE (coalesce(h.speed_kn,
    CASE WHEN coalesce(t.leg_id, ol.leg_id) IS NULL THEN os.speed_kn END) AS speed_kn),
    t.trip_key, coalesce(t.leg_id, ol.leg_id) AS leg_id, t.held_at
FROM hit h JOIN t USING (hit_id) LEFT JOIN open_stretch os USING (hit_id) LEFT
    JOIN half_row hr ON hr.ord = h.ord AND h.origin = 'flat'
LEFT JOIN only_leg ol ON ol.trip_key = t.trip_key AND h.leg IS NULL AND (h.time_s IS NULL OR ol.untimed)
    AND hr.ord IS NULL;
