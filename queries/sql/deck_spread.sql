-- The boat's spread as it was fished: each place with its middle setback and the lines that it rests on.
SELECT lower(n.line) AS position, round(median(n.setback_m), 6) AS setback_m, count(*) AS legs
FROM line n JOIN effort e USING (line_id) WHERE n.line IS NOT NULL AND n.setback_m > 0
GROUP BY 1 HAVING count(*) >= 3 ORDER BY setback_m, position
