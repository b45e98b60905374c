-- levels: yes
-- Effort by level of the factor $1. A leg counts its hours once at each level
-- that was out on it, and at each speed that it ran where a track tells.
, leg_part AS (
    SELECT level, ord, leg_id, trip_id, max(hours) AS hours, sum(line_hours) AS line_hours,
        speed_kn, bool_and(lines IS NULL) AS unlined
    FROM effort_at GROUP BY level, ord, leg_id, trip_id, speed_kn
)
SELECT level, count(DISTINCT trip_id) AS trips, count(DISTINCT leg_id) AS legs,
    round(sum(hours), 6) AS boat_hours, round(sum(line_hours), 6) AS line_hours,
    round(sum(hours * speed_kn), 6) AS distance_nmi,
    round(coalesce(sum(hours) FILTER (WHERE unlined), 0), 6) AS unlined_hours,
    count(DISTINCT leg_id) FILTER (WHERE unlined) AS unlined_legs,
    round(coalesce(sum(hours) FILTER (WHERE speed_kn IS NULL), 0), 6) AS no_speed_hours
FROM leg_part GROUP BY level, ord
ORDER BY level = 'not logged', ord, level
