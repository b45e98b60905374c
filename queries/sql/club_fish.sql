-- Every fish of the boat $1 with its species (where that is on the list of
-- species), its trip's month and first day, its day as in club_days.sql, best weight and fate.
WITH first AS (
    SELECT t.trip_id, coalesce(t.date, min(l.start_at)::DATE) AS on_date, least(t.date, min(l.start_at)::DATE) AS start
    FROM trip t LEFT JOIN leg l USING (trip_id) WHERE t.boat = $1 GROUP BY t.trip_id, t.date
)
SELECT f.trip_id, coalesce(strftime(d.start, '%Y-%m-%d'), '') AS start,
    coalesce(strftime(coalesce(coalesce(l.start_at, s.strike_at)::DATE, d.on_date), '%Y-%m-%d'), '') AS day,
    coalesce(c.code, CASE WHEN f.species_logged IS NULL THEN 'not logged' ELSE 'other' END) AS species,
    coalesce(strftime(d.on_date, '%Y-%m'), 'not logged') AS month,
    e.weight_kg, e.lo_kg AS weight_lo_kg, e.hi_kg AS weight_hi_kg, e.method,
    s.outcome = 'landed' AS landed, s.outcome = 'released' AS released, f.file, f.sheet, f."row"
FROM fish f JOIN first d ON d.trip_id = f.trip_id JOIN strike s USING (strike_id)
LEFT JOIN leg l ON l.leg_id = s.leg_id
LEFT JOIN species c ON c.code = f.species
LEFT JOIN estimate e ON e.fish_id = f.fish_id AND e.rank = 1
ORDER BY f.fish_id
