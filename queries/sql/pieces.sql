-- levels: yes
-- Every piece of effort with its level of the factor $1.
SELECT trip_id, leg_id, coalesce(line_id, 0) AS line_id, level, round(sum(line_hours), 9) AS line_hours
FROM effort_at WHERE line_hours > 0 GROUP BY 1, 2, 3, 4 ORDER BY 2, 3, 4
