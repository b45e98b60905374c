-- Every day of every trip of the boat $1: the trip's month and first day, the day's effort and strikes. A leg is
-- of the day that it starts on, a strike of its leg's; strikes_on_hours are those that belong to line-hours.
WITH worked AS (
    SELECT e.leg_id, any_value(l.trip_id) AS trip_id FROM effort e JOIN leg l USING (leg_id)
    GROUP BY e.leg_id HAVING sum(e.line_hours) > 0
), first AS (
    SELECT t.trip_id, coalesce(t.date, min(l.start_at)::DATE) AS on_date, least(t.date, min(l.start_at)::DATE) AS start
    FROM trip t LEFT JOIN leg l USING (trip_id) WHERE t.boat = $1 GROUP BY t.trip_id, t.date
), part AS (
    SELECT trip_id, start_at::DATE AS day, hours AS boat_hours, 0 AS line_hours, 0 AS strikes, 0 AS hookups,
        0 AS landed, 0 AS released, 0 AS strikes_on_hours
    FROM leg
    UNION ALL
    SELECT l.trip_id, l.start_at::DATE, 0, e.line_hours, 0, 0, 0, 0, 0 FROM effort e JOIN leg l USING (leg_id)
    UNION ALL
    SELECT s.trip_id, coalesce(l.start_at, s.strike_at)::DATE, 0, 0, 1, coalesce(s.hooked, false)::INTEGER,
        (s.outcome = 'landed')::INTEGER,
        (s.outcome = 'released')::INTEGER, coalesce(s.leg_id IN (SELECT leg_id FROM worked)
            OR (s.leg_id IS NULL AND s.trip_id IN (SELECT trip_id FROM worked)), false)::INTEGER
    FROM strike s LEFT JOIN leg l USING (leg_id)
)
SELECT p.trip_id, coalesce(strftime(any_value(f.start), '%Y-%m-%d'), '') AS start,
    coalesce(strftime(coalesce(p.day, f.on_date), '%Y-%m-%d'), '') AS day,
    coalesce(strftime(any_value(f.on_date), '%Y-%m'), 'not logged') AS level,
    coalesce(sum(p.boat_hours), 0)::DOUBLE AS boat_hours, coalesce(sum(p.line_hours), 0)::DOUBLE AS line_hours,
        sum(p.strikes)::BIGINT AS strikes,
    sum(p.strikes_on_hours)::BIGINT AS strikes_on_hours, sum(p.hookups)::BIGINT AS hookups,
    sum(p.landed)::BIGINT AS landed, sum(p.released)::BIGINT AS released
FROM part p JOIN first f USING (trip_id)
GROUP BY p.trip_id, coalesce(p.day, f.on_date)
ORDER BY any_value(f.on_date) IS NULL, level, p.trip_id, day
