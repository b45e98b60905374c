-- Every fish with what a weight can be estimated from, and the area of its leg.
SELECT f.fish_id, f.species, f.length_cm, f.length_kind, f.girth_cm, f.scale_kg, f.weight_state, f.certified, l.area
FROM fish f
LEFT JOIN strike s ON s.strike_id = f.strike_id
LEFT JOIN leg l ON l.leg_id = s.leg_id
ORDER BY f.fish_id
