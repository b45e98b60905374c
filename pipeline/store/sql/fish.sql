-- Every fish with what a weight can be estimated from.
SELECT fish_id, species, length_cm, length_kind, girth_cm, scale_kg, weight_state, certified FROM fish ORDER BY fish_id
