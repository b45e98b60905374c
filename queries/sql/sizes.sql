-- levels: yes
-- Fish by level of the factor $1 and weight class of $2 kg.
SELECT level, class_lo_kg, class_lo_kg + $2 AS class_hi_kg, count(*) AS fish,
    count(*) FILTER (WHERE on_scale) AS on_scale
FROM (
    SELECT s.level, s.ord, floor(round(e.weight_kg / $2, 9)) * $2 AS class_lo_kg,
        e.method IN ('certified scale', 'dock scale') AS on_scale
    FROM fish f JOIN strike_at_level s USING (strike_id)
    LEFT JOIN estimate e ON e.fish_id = f.fish_id AND e.rank = 1
)
GROUP BY level, ord, class_lo_kg
ORDER BY level = 'not logged', ord, level, class_lo_kg NULLS LAST
