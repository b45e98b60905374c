SELECT (SELECT count(*) FROM temp.part_trip),
    (SELECT count(*) FROM season.trip WHERE date IS NULL AND ($1 = '' OR boat = $1)),
    (SELECT count(*) FROM season.strike s WHERE (s.species IS NULL AND s.species_logged IS NULL
        OR s.strike_id IN (SELECT strike_id FROM temp.part_vague)) AND s.trip_id IN (SELECT trip_id FROM temp.part_trip)
        AND s.strike_id NOT IN (SELECT strike_id FROM temp.part_strike))
ORDER BY 1
