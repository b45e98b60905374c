-- A strike of no trip has its own day, and no boat. The species of a row of counts is that of its
-- fish that came to the boat: of its other strikes nobody knows it (part_vague).
INSERT INTO temp.part_strike
SELECT s.strike_id FROM season.strike s
WHERE (s.trip_id IN (SELECT trip_id FROM temp.part_trip)
    OR s.trip_id IS NULL AND $1 = '' AND ($2 = '' OR s.strike_at::DATE >= CAST(nullif($2, '') AS DATE))
        AND ($3 = '' OR s.strike_at::DATE <= CAST(nullif($3, '') AS DATE)))
AND ($4 = '' OR s.species = $4 AND s.strike_id NOT IN (SELECT strike_id FROM temp.part_vague)
    OR EXISTS (SELECT 1 FROM season.fish f WHERE f.strike_id = s.strike_id AND f.species = $4))
