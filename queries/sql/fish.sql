-- Every fish with its best weight.
SELECT t.trip, strftime(f.date, '%Y-%m-%d') AS date, coalesce(f.species, f.species_logged) AS species,
    f.length_cm, f.length_kind, f.girth_cm, f.scale_kg,
    e.weight_kg, e.lo_kg AS weight_lo_kg, e.hi_kg AS weight_hi_kg, e.method,
    coalesce(k.speed_kn, l.speed_kn, round(s.speed_kn, 1)) AS speed_kn,
        coalesce(b.level, 'not logged') AS speed_band, f.kept,
    t.boat, f.file, f.sheet, f."row"
FROM fish f
JOIN strike s USING (strike_id)
LEFT JOIN trip t ON t.trip_id = f.trip_id
LEFT JOIN leg l ON l.leg_id = s.leg_id
LEFT JOIN strike_track k ON k.strike_id = s.strike_id
LEFT JOIN estimate e ON e.fish_id = f.fish_id AND e.rank = 1
LEFT JOIN band b ON b.factor = 'speed-band' AND coalesce(k.speed_kn, l.speed_kn, round(s.speed_kn, 1)) >= b.lo
    AND (b.hi IS NULL OR coalesce(k.speed_kn, l.speed_kn, round(s.speed_kn, 1)) < b.hi)
ORDER BY f.fish_id
