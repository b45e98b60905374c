-- The species of the season with the range of their lengths, and the relation that
-- weighed most of them by the length alone.
SELECT f.species, coalesce(any_value(p.name), f.species) AS name, count(*) AS fish,
    min(f.length_cm) AS shortest_cm, max(f.length_cm) AS longest_cm, min(f.girth_cm) AS least_girth_cm,
        max(f.girth_cm) AS most_girth_cm,
    mode(e.relation) AS relation
FROM fish f
LEFT JOIN species p ON p.code = f.species
LEFT JOIN (SELECT fish_id, relation FROM estimate WHERE method = 'length'
    QUALIFY row_number() OVER (PARTITION BY fish_id ORDER BY "rank") = 1) e
    ON e.fish_id = f.fish_id
WHERE f.species IS NOT NULL
GROUP BY f.species
ORDER BY fish DESC, f.species
