-- Rows that are kept and counted, but may be wrong, each with why.
WITH tape AS (
    SELECT f.fish_id, f.file, f.sheet, f."row", f.scale_kg, coalesce(nullif(f.weight_state, ''), 'round') AS state, s.weight_kg AS scale_round_kg, e.weight_kg AS tape_kg, e.method
    FROM fish f
    JOIN (SELECT fish_id, min(rank) AS rank FROM estimate WHERE method NOT IN ('certified scale', 'dock scale', 'own coefficient') GROUP BY fish_id) b USING (fish_id)
    JOIN estimate e ON e.fish_id = f.fish_id AND e.rank = b.rank
    JOIN estimate s ON s.fish_id = f.fish_id AND s.method IN ('certified scale', 'dock scale')
), days AS (
    SELECT trip_id, date, lag(date) OVER (ORDER BY date, trip_id) AS before, lead(date) OVER (ORDER BY date, trip_id) AS after
    FROM trip WHERE date IS NOT NULL
), odd_day AS (
    SELECT trip_id, date FROM days
    WHERE coalesce(date - before, 999) > 300 AND coalesce(after - date, 999) > 300 AND (SELECT count(*) FROM days) > 2
), all_doubts AS (
    SELECT 'legs overlap' AS "check", b.file, b.sheet, b."row", strftime(b.start_at, '%Y-%m-%d %H:%M') AS found,
        'starts before the leg of ' || a.file || CASE WHEN a.sheet <> '' THEN ' ' || a.sheet ELSE '' END || ' row ' || a."row" || ' has ended (' || strftime(a.end_at, '%H:%M') || '): both are counted' AS reason
    FROM leg a JOIN trip ta ON ta.trip_id = a.trip_id
    JOIN leg b ON b.start_at::DATE BETWEEN a.start_at::DATE AND a.end_at::DATE
        AND (b.start_at > a.start_at OR (b.start_at = a.start_at AND b.leg_id > a.leg_id)) AND b.start_at < a.end_at
    JOIN trip tb ON tb.trip_id = b.trip_id AND tb.boat = ta.boat
    UNION ALL
    SELECT 'strike without a leg', file, sheet, "row", coalesce(strftime(strike_at, '%Y-%m-%d %H:%M'), ''),
        'no leg in the logs holds it: counted under not logged'
    FROM strike WHERE leg_id IS NULL
    UNION ALL
    SELECT 'fish without a strike', file, sheet, "row", coalesce(species_logged, ''),
        'the strikes do not tell of it: counted as a strike of its own'
    FROM strike s WHERE origin = 'fish' AND EXISTS (SELECT 1 FROM entry WHERE kind = 'strikes')
    UNION ALL
    SELECT 'long fish', f.file, f.sheet, f."row", round(f.length_cm, 1) || ' cm',
        'longer than any ' || p.name || ' on record (' || round(p.max_length_cm) || ' cm): wrong unit or species?'
    FROM fish f JOIN species p ON p.code = f.species WHERE f.length_cm > p.max_length_cm * 1.05
    UNION ALL
    SELECT 'heavy fish', f.file, f.sheet, f."row", round(f.scale_kg, 1) || ' kg',
        'heavier than any ' || p.name || ' on record (' || round(p.max_weight_kg) || ' kg): wrong unit or species?'
    FROM fish f JOIN species p ON p.code = f.species WHERE f.scale_kg > p.max_weight_kg * 1.05
    UNION ALL
    SELECT 'girth and length', file, sheet, "row", 'girth ' || round(girth_cm, 1) || ' cm, length ' || round(length_cm, 1) || ' cm',
        CASE WHEN girth_cm > length_cm THEN 'the girth is more than the length: swapped?'
             ELSE 'the girth is ' || round(girth_cm / length_cm, 2) || ' of the length: expected some 0.3 to 0.85' END
    FROM fish WHERE girth_cm / length_cm NOT BETWEEN 0.25 AND 0.9
    UNION ALL
    SELECT 'scale and tape', file, sheet, "row", round(scale_kg, 1) || ' kg on the scale, ' || round(tape_kg, 1) || ' kg by ' || method,
        CASE WHEN scale_round_kg / tape_kg BETWEEN 1.85 AND 2.65 THEN 'the scale is about 2.2 times the tape: pounds logged as kilograms?'
             WHEN scale_round_kg / tape_kg BETWEEN 0.38 AND 0.54 THEN 'the scale is about 0.45 of the tape: kilograms logged as pounds?'
             WHEN scale_round_kg / tape_kg > 8 THEN 'the tape is far too short: inches logged as centimetres?'
             WHEN scale_round_kg / tape_kg < 0.125 THEN 'the tape is far too long: centimetres logged as inches?'
             ELSE 'they differ by more than a third' END
    FROM tape WHERE scale_round_kg / tape_kg NOT BETWEEN 0.66 AND 1.5
    UNION ALL
    SELECT 'odd speed', file, sheet, "row", speed_kn || ' kn', 'an unusual speed to troll at: kept as logged'
    FROM leg WHERE speed_kn < 1.5 OR speed_kn > 22
    UNION ALL
    SELECT "column" || ': read with a doubt', file, sheet, "row", cell, reason FROM reading_doubt
    UNION ALL
    SELECT 'long leg', file, sheet, "row", round(hours, 1) || ' h', 'a leg of more than 12 hours: is its end right?'
    FROM leg WHERE hours > 12
    UNION ALL
    SELECT 'odd date', coalesce(t.file, l.file, ''), coalesce(t.sheet, l.sheet, ''), coalesce(t."row", l."row", 0), strftime(o.date, '%Y-%m-%d'),
        'no other trip within 300 days: is the year right?'
    FROM odd_day o JOIN trip t USING (trip_id)
    LEFT JOIN (SELECT trip_id, arg_min(file, leg_id) AS file, arg_min(sheet, leg_id) AS sheet, arg_min("row", leg_id) AS "row" FROM leg GROUP BY trip_id) l ON l.trip_id = t.trip_id
    UNION ALL
    SELECT 'future date', coalesce(t.file, l.file, ''), coalesce(t.sheet, l.sheet, ''), coalesce(t."row", l."row", 0), strftime(t.date, '%Y-%m-%d'),
        'after the day on which the log was read'
    FROM trip t LEFT JOIN (SELECT trip_id, arg_min(file, leg_id) AS file, arg_min(sheet, leg_id) AS sheet, arg_min("row", leg_id) AS "row" FROM leg GROUP BY trip_id) l ON l.trip_id = t.trip_id
    WHERE t.date > (SELECT max(loaded_at) + INTERVAL 2 DAY FROM log)
)
SELECT * FROM all_doubts ORDER BY "check", file, sheet, "row", found, reason
