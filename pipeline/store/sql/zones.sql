-- The zones that logs name and the years that the entries span.
SELECT z.zone, y.first_year, y.last_year
FROM (SELECT zone FROM entry UNION SELECT zone FROM log) z
CROSS JOIN (SELECT min(year(date))::INTEGER AS first_year, max(year(date))::INTEGER AS last_year FROM entry) y
WHERE z.zone IS NOT NULL AND y.first_year IS NOT NULL ORDER BY z.zone
