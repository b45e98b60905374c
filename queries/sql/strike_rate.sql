-- levels: yes
-- Strikes and their line-hours by level of each of the factors $1.
, hours AS (
    SELECT factor, level, ord, sum(line_hours) AS line_hours FROM effort_at GROUP BY factor, level, ord
), strikes AS (
    SELECT factor, level, ord, count(*) AS strikes, count(*) FILTER (WHERE hooked) AS hookups,
        count(*) FILTER (WHERE outcome = 'landed') AS landed, count(*) FILTER (WHERE outcome = 'released') AS released
    FROM strike_at_level GROUP BY factor, level, ord
)
SELECT factor, level, round(coalesce(line_hours, 0), 6) AS line_hours, coalesce(strikes, 0) AS strikes,
    coalesce(hookups, 0) AS hookups, coalesce(landed, 0) AS landed, coalesce(released, 0) AS released
FROM hours FULL JOIN strikes USING (factor, level, ord)
ORDER BY factor, level = 'not logged', ord, level
