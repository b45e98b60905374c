-- Every fish of the boat $1 with its species (where that is on the list of
-- species), month, best weight and fate.
WITH legs AS (
    SELECT trip_id, min(start_at) AS first_at FROM leg GROUP BY trip_id
)
SELECT f.trip_id, coalesce(c.code, CASE WHEN f.species_logged IS NULL THEN 'not logged' ELSE 'other' END) AS species,
    coalesce(strftime(coalesce(t.date, g.first_at::DATE), '%Y-%m'), 'not logged') AS month,
    e.weight_kg, e.lo_kg AS weight_lo_kg, e.hi_kg AS weight_hi_kg, e.method,
    s.outcome = 'landed' AS landed, s.outcome = 'released' AS released
FROM fish f JOIN trip t ON t.trip_id = f.trip_id JOIN strike s USING (strike_id)
LEFT JOIN legs g ON g.trip_id = f.trip_id
LEFT JOIN species c ON c.code = f.species
LEFT JOIN estimate e ON e.fish_id = f.fish_id AND e.rank = 1
WHERE t.boat = $1
ORDER BY f.fish_id
