-- The measures of each fish, its round weight on the scale, and its weight by the best
-- method of the tape that is not the boat's own: what its measures are doubted by.
WITH judged AS (
    SELECT fish_id, arg_min(method, "rank") AS method, arg_min(weight_kg, "rank") AS weight_kg
    FROM estimate WHERE method NOT IN ('certified scale', 'dock scale', 'own coefficient') GROUP BY fish_id
)
SELECT f.file, f.sheet, f."row", t.trip, t.boat, p.name, p.max_length_cm AS longest_cm, p.max_weight_kg AS heaviest_kg,
    f.length_cm, f.girth_cm, f.scale_kg, s.weight_kg AS round_kg, j.weight_kg AS tape_kg, j.method AS tape_method
FROM fish f
LEFT JOIN trip t USING (trip_id)
LEFT JOIN species p ON p.code = f.species
LEFT JOIN estimate s ON s.fish_id = f.fish_id AND s.method IN ('certified scale', 'dock scale')
LEFT JOIN judged j ON j.fish_id = f.fish_id
ORDER BY f.fish_id
