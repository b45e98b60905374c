-- levels: yes
-- The best weight of every fish that has one, with its species and its level of
-- the factor $1, and whether it is from a scale.
SELECT coalesce(f.species, f.species_logged, 'not logged') AS species, s.level, coalesce(s.trip_id, 0) AS trip_id,
    e.weight_kg,
    e.method IN ('certified scale', 'dock scale') AS on_scale
FROM fish f JOIN strike_at_level s USING (strike_id)
JOIN estimate e ON e.fish_id = f.fish_id AND e.rank = 1
ORDER BY species, level = 'not logged', ord, level, weight_kg
