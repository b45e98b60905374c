-- levels: club
-- Line-hours and strikes of the boat $2 by trip and level of the factor $1.
, worked AS (
    SELECT e.leg_id, any_value(l.trip_id) AS trip_id FROM effort e JOIN leg l USING (leg_id)
    GROUP BY e.leg_id HAVING sum(e.line_hours) > 0
), part AS (
    SELECT trip_id, level, ord, line_hours, 0 AS strikes, 0 AS strikes_on_hours, 0 AS hookups, 0 AS landed, 0 AS released
    FROM effort_at
    UNION ALL
    SELECT trip_id, level, ord, 0, 1, coalesce(leg_id IN (SELECT leg_id FROM worked)
            OR (leg_id IS NULL AND trip_id IN (SELECT trip_id FROM worked)), false)::INTEGER,
        coalesce(hooked, false)::INTEGER, (outcome = 'landed')::INTEGER, (outcome = 'released')::INTEGER
    FROM strike_at_level
)
SELECT p.trip_id, p.level, 0.0::DOUBLE AS boat_hours, sum(p.line_hours)::DOUBLE AS line_hours, sum(p.strikes)::BIGINT AS strikes,
    sum(p.strikes_on_hours)::BIGINT AS strikes_on_hours, sum(p.hookups)::BIGINT AS hookups,
    sum(p.landed)::BIGINT AS landed, sum(p.released)::BIGINT AS released
FROM part p JOIN trip t USING (trip_id) WHERE t.boat = $2
GROUP BY p.trip_id, p.level, p.ord
ORDER BY p.level = 'not logged', p.ord, p.level, p.trip_id
