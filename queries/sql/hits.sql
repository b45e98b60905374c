-- levels: yes
-- Every strike on a leg whose lines are logged with its level of the factor $1.
SELECT strike_id, trip_id, leg_id, level FROM strike_at_level
WHERE leg_id IN (SELECT leg_id FROM effort GROUP BY leg_id HAVING sum(line_hours) > 0) ORDER BY strike_id
