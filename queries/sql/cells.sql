-- levels: yes
-- Effort by level of each of the factors $1, trip, leg and line, and the strikes that
-- belong to that effort: those on legs whose lines are logged, and those of no leg
-- on trips that have such legs.
, worked AS (
    SELECT e.leg_id, any_value(l.trip_id) AS trip_id FROM effort e JOIN leg l USING (leg_id)
    GROUP BY e.leg_id HAVING sum(e.line_hours) > 0
), piece_of AS (
    SELECT factor, trip_id, leg_id, line_id, level, line_hours, 0 AS strikes FROM effort_at WHERE line_hours > 0
    UNION ALL
    SELECT factor, trip_id, leg_id, line_id, level, 0, 1 FROM strike_at_level
    WHERE leg_id IN (SELECT leg_id FROM worked) OR (leg_id IS NULL AND trip_id IN (SELECT trip_id FROM worked))
)
SELECT factor, trip_id, coalesce(leg_id, 0) AS leg_id, coalesce(line_id, 0) AS line_id, level,
    round(sum(line_hours), 9) AS line_hours, sum(strikes)::BIGINT AS strikes
FROM piece_of WHERE trip_id IS NOT NULL GROUP BY 1, 2, 3, 4, 5 ORDER BY 1, 2, 3, 4, 5
