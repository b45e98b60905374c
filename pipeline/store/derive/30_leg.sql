-- Stretches of effort as logged. A leg without a date takes its trip's, where
-- the trip is of one day or one night; one that starts before the boat left is
-- of the next day, where the boat was back after it. Over a night on which the clock
-- changes a leg lasts as long as it lasted, not as the clock has it; an hour that the
-- clock has twice is taken to be its first where a leg ends in it.
CREATE OR REPLACE TEMP TABLE trip_zone AS
SELECT trip_key, min(zone) AS zone FROM labelled WHERE trip_key IS NOT NULL AND zone IS NOT NULL GROUP BY ALL;

CREATE OR REPLACE TEMP TABLE stretch AS
WITH dated AS (
    SELECT l.ord, l.ord - coalesce(l.part, 0) AS row_ord, coalesce(l.line, l.lure) IS NOT NULL
            AND coalesce(l.speed_kn, l.lines_out, l.strikes_n, l.hooked_n, l.landed_n) IS NULL AS bare,
        l.log_id, l.kind, l.boat, l.trip_key, l.leg, l.line,
        l.start_s, l.end_s, t.depart_at, t.return_at, coalesce(l.zone, z.zone, o.zone) AS tz,
        coalesce(l.date, CASE WHEN t.return_at IS NULL OR t.return_at < t.date + INTERVAL 36 HOUR THEN t.date
            END) AS on_date,
        coalesce(l.end_s - l.start_s - coalesce(l.stopped_s, 0), l.duration_s) / 3600.0 AS hours,
        if(l.start_s IS NOT NULL AND l.end_s IS NOT NULL, coalesce(l.stopped_s, 0), 0) / 3600.0 AS stopped
    FROM labelled l LEFT JOIN trip_day t ON t.trip_key = l.trip_key LEFT JOIN trip_zone z ON z.trip_key = l.trip_key
    JOIN log o ON o.log_id = l.log_id
    WHERE l.kind IN ('legs', 'flat')
      AND ((l.start_s IS NOT NULL AND l.end_s IS NOT NULL) OR l.duration_s IS NOT NULL)
), started AS (
    SELECT *, on_date + to_seconds(start_s) AS logged_at FROM dated
), placed AS (
    SELECT * EXCLUDE (logged_at, depart_at, return_at),
        CASE WHEN logged_at < depart_at AND logged_at + INTERVAL 1 DAY <= return_at
             THEN logged_at + INTERVAL 1 DAY ELSE logged_at END AS start_at
    FROM started
), offsets AS (
    SELECT p.*, p.start_at + to_seconds(p.end_s - p.start_s) AS clock_end, b.offset_s AS start_offset_s
    FROM placed p ASOF LEFT JOIN zone_offset b ON b.zone = p.tz AND b.local_from <= p.start_at
), changed AS (
    SELECT f.*, f.start_offset_s - e.offset_s AS change_s,
        f.clock_end < e.local_from + to_seconds(f.start_offset_s - e.offset_s) AS twice
    FROM offsets f ASOF LEFT JOIN zone_offset e ON e.zone = f.tz AND e.local_from <= f.clock_end
)
-- put_back: hours by which the clock was put back meanwhile. Hours without clock times are as they
-- lasted; an ASOF join finds them an offset all the same.
SELECT * EXCLUDE (hours, tz, clock_end, start_offset_s, change_s, twice),
    CASE WHEN clock_end IS NULL OR twice THEN 0 ELSE coalesce(change_s, 0) / 3600.0 END AS put_back,
        hours + put_back AS hours
FROM changed;

-- A leg is known by its boat and start; without a start by its trip and name or
-- clock; the lines of a row that has a place for each are of its stretch; rows that have nothing but a line each
-- are of one, as often as the line stands there on one day; else it is its own row.
CREATE OR REPLACE TEMP TABLE keyed AS
SELECT *, CASE
    WHEN start_at IS NOT NULL THEN NULL
    WHEN trip_key IS NOT NULL AND leg IS NOT NULL THEN concat_ws('|', trip_key, leg, start_s, end_s)
    WHEN trip_key IS NOT NULL AND start_s IS NOT NULL THEN concat_ws('|', trip_key, start_s)
    WHEN ord <> row_ord AND kind = 'flat' AND bare
        AND row_ord IN (SELECT ord FROM stretch WHERE kind = 'flat' AND line IS NULL)
    THEN 'row|' || row_ord
    WHEN line IS NOT NULL AND kind = 'flat' AND leg IS NULL AND coalesce(trip_key, on_date::VARCHAR) IS NOT NULL
    THEN concat_ws('|', 'line', log_id, coalesce(trip_key, '-'), on_date, row_number() OVER (
        PARTITION BY log_id, trip_key, on_date, lower(line) ORDER BY ord))
    ELSE 'row|' || ord END AS key_word
FROM stretch;

CREATE OR REPLACE TEMP TABLE leg_known AS
SELECT row_number() OVER (ORDER BY start_at NULLS LAST, boat, ord)::INTEGER AS leg_id, *
FROM (
    SELECT boat, start_at, key_word, min(ord) AS ord,
        min(log_id) <> max(log_id) OR count(*) FILTER (WHERE kind = 'legs') > 1 AS again
    FROM keyed GROUP BY boat, start_at, key_word
);

CREATE OR REPLACE TEMP TABLE leg_row AS
SELECT k.ord, k.log_id, k.kind, k.trip_key, k.on_date, k.line, k.hours, k.put_back, k.stopped, n.leg_id, n.again
FROM keyed k JOIN leg_known n ON n.boat = k.boat AND n.start_at = k.start_at WHERE k.start_at IS NOT NULL
UNION ALL
SELECT k.ord, k.log_id, k.kind, k.trip_key, k.on_date, k.line, k.hours, k.put_back, k.stopped, n.leg_id, n.again
FROM keyed k JOIN leg_known n ON n.boat = k.boat AND n.key_word = k.key_word WHERE k.start_at IS NULL;

-- The same leg again: a row of legs beside an earlier one, or a line on a leg
-- that another log has already. Its lines and strikes are not counted twice.
CREATE OR REPLACE TEMP TABLE leg_again AS
SELECT ord, of_ord FROM (
    SELECT ord, log_id, kind, line,
        min(ord) FILTER (WHERE kind = 'legs') OVER (PARTITION BY leg_id) AS first_leg,
        first_value(ord) OVER (PARTITION BY leg_id ORDER BY ord) AS first_any,
        first_value(log_id) OVER (PARTITION BY leg_id ORDER BY ord) AS first_any_log,
        first_value(ord) OVER (PARTITION BY leg_id, kind, lower(line) ORDER BY ord) AS first_line,
        first_value(log_id) OVER (PARTITION BY leg_id, kind, lower(line) ORDER BY ord) AS first_line_log,
        CASE
            WHEN kind = 'legs' AND first_any_log <> log_id THEN first_any
            WHEN kind = 'legs' AND first_leg < ord THEN first_leg
            WHEN kind = 'flat' AND first_line_log <> log_id THEN first_line
            WHEN kind = 'flat' AND line IS NULL AND first_any_log <> log_id THEN first_any
        END AS of_ord
    FROM leg_row WHERE again
) WHERE of_ord IS NOT NULL;

CREATE OR REPLACE TEMP VIEW counted AS
SELECT * FROM leg_row WHERE ord NOT IN (SELECT ord FROM leg_again);

CREATE OR REPLACE TEMP TABLE leg_made AS
WITH fact AS (
    SELECT c.leg_id, min(c.ord) AS ord,
        first_known(c.trip_key, c.ord) AS trip_key, first_known(c.on_date, c.ord) AS on_date,
        first_known(e.leg, c.ord) AS leg,
        -- a stop is often told on one of the rows that repeat the leg; rows of a line each have their own
        CASE WHEN count(c.line) > 0 THEN max(c.hours) ELSE max(c.hours + c.stopped) - max(c.stopped) END AS hours,
        CASE WHEN count(c.line) > 0 THEN arg_max(c.put_back, c.hours)
            ELSE arg_max(c.put_back, c.hours + c.stopped) END AS put_back,
        CASE WHEN count(c.line) > 0 THEN arg_max(c.stopped, c.hours) ELSE max(c.stopped) END AS stopped,
        round(first_known(e.speed_kn, c.ord), 1) AS speed_kn, first_known(e.lines_out, c.ord) AS lines_out,
        first_known(e.heading_deg, c.ord) AS heading_deg, first_known(e.lat, c.ord) AS lat,
            first_known(e.lon, c.ord) AS lon,
        first_known(e.area, c.ord) AS area, first_known(e.sea_temp_c, c.ord) AS sea_temp_c,
            first_known(e.wind, c.ord) AS wind,
        first_known(e.sea_state, c.ord) AS sea_state, first_known(e.approach, c.ord) AS approach,
        first_known(e.school_m, c.ord) AS school_m, first_known(e.nearest_boat_m, c.ord) AS nearest_boat_m,
        bool_or(e.tangle) AS tangle, first_known(e.tangled_lines, c.ord) AS tangled_lines,
            first_known(e.zone, c.ord) AS zone,
        first_known(CASE WHEN c.kind = 'legs' THEN e.notes END, c.ord) AS notes
    FROM counted c JOIN placed_entry e USING (ord) GROUP BY c.leg_id
)
-- end_at is by the boat's clock: what it stopped meanwhile is no hours, but the lines came up no sooner
SELECT f.* EXCLUDE (put_back, stopped), k.boat, k.start_at,
    k.start_at + to_microseconds(((f.hours - f.put_back + f.stopped) * 3600000000)::BIGINT) AS end_at
FROM fact f JOIN leg_known k USING (leg_id);
