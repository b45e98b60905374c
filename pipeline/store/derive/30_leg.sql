-- Stretches of effort as logged. A leg without a date takes its trip's, where
-- the trip is of one day or one night; one that starts before the boat left is
-- of the next day, where the boat was back after it.
CREATE OR REPLACE TEMP TABLE stretch AS
WITH dated AS (
    SELECT l.*, t.depart_at, t.return_at,
        coalesce(l.date, CASE WHEN t.return_at IS NULL OR t.return_at < t.date + INTERVAL 36 HOUR THEN t.date END) AS on_date,
        coalesce(end_s - start_s, duration_s) / 3600.0 AS hours
    FROM labelled l LEFT JOIN trip_day t ON t.trip_key = l.trip_key
    WHERE l.kind IN ('legs', 'flat')
      AND ((l.start_s IS NOT NULL AND l.end_s IS NOT NULL) OR l.duration_s IS NOT NULL)
), started AS (
    SELECT *, on_date + to_seconds(start_s) AS logged_at FROM dated
)
SELECT * EXCLUDE (logged_at),
    CASE WHEN logged_at < depart_at AND logged_at + INTERVAL 1 DAY <= return_at
         THEN logged_at + INTERVAL 1 DAY ELSE logged_at END AS start_at
FROM started;

CREATE OR REPLACE TEMP TABLE keyed AS
SELECT *, CASE
    WHEN start_at IS NOT NULL THEN concat_ws('|', boat, start_at)
    WHEN trip_key IS NOT NULL AND leg IS NOT NULL THEN concat_ws('|', trip_key, leg, start_s, end_s)
    WHEN trip_key IS NOT NULL AND start_s IS NOT NULL THEN concat_ws('|', trip_key, start_s)
    ELSE concat_ws('|', 'row', ord) END AS leg_key
FROM stretch;

-- The same leg again: a row of legs beside an earlier one, or a line on a leg
-- that another log has already. Its lines and strikes are not counted twice.
CREATE OR REPLACE TEMP TABLE leg_again AS
SELECT ord, of_ord FROM (
    SELECT ord, log_id, kind, line,
        min(ord) FILTER (WHERE kind = 'legs') OVER (PARTITION BY leg_key) AS first_leg,
        first_value(ord) OVER (PARTITION BY leg_key ORDER BY ord) AS first_any,
        first_value(log_id) OVER (PARTITION BY leg_key ORDER BY ord) AS first_any_log,
        first_value(ord) OVER (PARTITION BY leg_key, kind, lower(line) ORDER BY ord) AS first_line,
        first_value(log_id) OVER (PARTITION BY leg_key, kind, lower(line) ORDER BY ord) AS first_line_log,
        CASE
            WHEN kind = 'legs' AND first_any_log <> log_id THEN first_any
            WHEN kind = 'legs' AND first_leg < ord THEN first_leg
            WHEN kind = 'flat' AND first_line_log <> log_id THEN first_line
            WHEN kind = 'flat' AND line IS NULL AND first_any_log <> log_id THEN first_any
        END AS of_ord
    FROM keyed
) WHERE of_ord IS NOT NULL;

CREATE OR REPLACE TEMP TABLE counted AS
SELECT * FROM keyed WHERE ord NOT IN (SELECT ord FROM leg_again);

CREATE OR REPLACE TEMP TABLE leg_made AS
SELECT row_number() OVER (ORDER BY start_at NULLS LAST, boat, ord)::INTEGER AS leg_id, *
FROM (
    SELECT leg_key, min(boat) AS boat, min(ord) AS ord,
        first_known(trip_key, ord) AS trip_key, first_known(on_date, ord) AS on_date,
        first_known(leg, ord) AS leg, min(start_at) AS start_at, max(hours) AS hours,
        round(first_known(speed_kn, ord), 1) AS speed_kn, first_known(lines_out, ord) AS lines_out,
        first_known(heading_deg, ord) AS heading_deg, first_known(lat, ord) AS lat, first_known(lon, ord) AS lon,
        first_known(area, ord) AS area, first_known(sea_temp_c, ord) AS sea_temp_c, first_known(wind, ord) AS wind,
        first_known(sea_state, ord) AS sea_state, first_known(approach, ord) AS approach,
        first_known(school_m, ord) AS school_m, first_known(nearest_boat_m, ord) AS nearest_boat_m,
        bool_or(tangle) AS tangle, first_known(tangled_lines, ord) AS tangled_lines, first_known(zone, ord) AS zone,
        arg_min(notes, ord) FILTER (WHERE notes IS NOT NULL AND kind = 'legs') AS notes
    FROM counted GROUP BY leg_key
);
