-- Every fish with a weight from a scale, beside what the tape said: the round
-- weight of the scale, the girth rule's, and the chosen relation's by length alone.
WITH best AS (
    SELECT fish_id, method, weight_kg, relation, notes
    FROM estimate QUALIFY row_number() OVER (PARTITION BY fish_id, method ORDER BY "rank") = 1
)
SELECT t.trip, strftime(f.date, '%Y-%m-%d') AS date, f.species, coalesce(p.name, f.species, f.species_logged) AS name,
    f.length_cm, f.length_kind, f.girth_cm, f.scale_kg, f.weight_state,
    s.method AS scale, s.weight_kg AS round_kg, g.weight_kg AS girth_kg, l.weight_kg AS length_kg, l.relation,
    r.a AS relation_a, r.b AS relation_b, r.length_lo_cm AS relation_lo_cm, r.length_hi_cm AS relation_hi_cm,
    t.boat, f.file, f.sheet, f."row"
FROM fish f
LEFT JOIN species p ON p.code = f.species
LEFT JOIN trip t ON t.trip_id = f.trip_id
LEFT JOIN best s ON s.fish_id = f.fish_id AND s.method IN ('certified scale', 'dock scale')
LEFT JOIN best g ON g.fish_id = f.fish_id AND g.method = 'length and girth'
LEFT JOIN best l ON l.fish_id = f.fish_id AND l.method = 'length'
LEFT JOIN relation r ON r.relation = l.relation
WHERE f.scale_kg IS NOT NULL
ORDER BY f.fish_id
