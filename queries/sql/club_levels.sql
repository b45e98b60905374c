-- levels: club
-- Line-hours and strikes of the boat $2 by trip, day and level of the factor $1; days as in club_days.sql. A strike
-- that belongs to no line-hours is of no level: those of a level are what its rate is made of.
, worked AS (
    SELECT e.leg_id, any_value(l.trip_id) AS trip_id FROM effort e JOIN leg l USING (leg_id)
    GROUP BY e.leg_id HAVING sum(e.line_hours) > 0
), first AS (
    SELECT t.trip_id, coalesce(t.date, min(l.start_at)::DATE) AS on_date, least(t.date, min(l.start_at)::DATE) AS start
    FROM trip t LEFT JOIN leg l USING (trip_id) WHERE t.boat = $2 GROUP BY t.trip_id, t.date
), part AS (
    SELECT trip_id, leg_id, NULL::TIMESTAMP AS strike_at, level, ord, line_hours, 0 AS strikes,
        0 AS strikes_on_hours, 0 AS hookups, 0 AS landed, 0 AS released
    FROM effort_at
    UNION ALL
    SELECT trip_id, leg_id, strike_at, CASE WHEN on_hours THEN level ELSE 'not logged' END,
        CASE WHEN on_hours THEN ord ELSE 1000 END, 0, 1,
        on_hours::INTEGER, coalesce(hooked, false)::INTEGER, (outcome = 'landed')::INTEGER,
            (outcome = 'released')::INTEGER
    FROM (
        SELECT a.*, s.strike_at, coalesce(a.leg_id IN (SELECT leg_id FROM worked)
            OR (a.leg_id IS NULL AND a.trip_id IN (SELECT trip_id FROM worked)), false) AS on_hours
        FROM strike_at_level a JOIN strike s USING (strike_id)
    )
), dated AS (
    SELECT p.*, f.start, coalesce(coalesce(l.start_at, p.strike_at)::DATE, f.on_date) AS on_day
    FROM part p JOIN first f USING (trip_id) LEFT JOIN leg l ON l.leg_id = p.leg_id
)
SELECT trip_id, coalesce(strftime(any_value(start), '%Y-%m-%d'), '') AS start,
    coalesce(strftime(on_day, '%Y-%m-%d'), '') AS day,
    level, 0.0::DOUBLE AS boat_hours, sum(line_hours)::DOUBLE AS line_hours, sum(strikes)::BIGINT AS strikes,
    sum(strikes_on_hours)::BIGINT AS strikes_on_hours, sum(hookups)::BIGINT AS hookups,
    sum(landed)::BIGINT AS landed, sum(released)::BIGINT AS released
FROM dated
GROUP BY trip_id, on_day, level, ord
ORDER BY level = 'not logged', ord, level, trip_id, day
