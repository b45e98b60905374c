-- Rows that are kept and counted, but may be wrong, each with why. The measures of the
-- fish are judged apart: see measures.sql.
WITH days AS (
    SELECT trip_id, date, lag(date) OVER (ORDER BY date, trip_id) AS before,
        lead(date) OVER (ORDER BY date, trip_id) AS after
    FROM trip WHERE date IS NOT NULL
), odd_day AS (
    SELECT trip_id, date FROM days
    WHERE coalesce(date - before, 999) > 300 AND coalesce(after - date, 999) > 300 AND (SELECT count(*) FROM days) > 2
), all_doubts AS (
    SELECT 'legs overlap' AS "check", b.file, b.sheet, b."row", strftime(b.start_at, '%Y-%m-%d %H:%M') AS found,
        'starts before the leg of ' || a.file || CASE WHEN a.sheet <> '' THEN ' ' || a.sheet ELSE ''
            END || ' row ' || a."row" || ' has ended (' || strftime(a.end_at,
                '%H:%M') || '): both are counted' AS reason
    FROM leg a JOIN trip ta ON ta.trip_id = a.trip_id
    JOIN leg b ON b.start_at::DATE BETWEEN a.start_at::DATE AND a.end_at::DATE
        AND (b.start_at > a.start_at OR (b.start_at = a.start_at AND b.leg_id > a.leg_id)) AND b.start_at < a.end_at
    JOIN trip tb ON tb.trip_id = b.trip_id AND tb.boat = ta.boat
    UNION ALL
    SELECT 'strike without a leg', file, sheet, "row", coalesce(strftime(strike_at, '%Y-%m-%d %H:%M'), ''),
        'no leg was fished at that time: counted under not logged'
    FROM strike WHERE leg_id IS NULL
    UNION ALL
    -- a strike is counted where its effort is: elsewhere it would be divided by other hours
    SELECT 'strike at another speed', s.file, s.sheet, s."row", round(s.speed_kn, 1) || ' kn',
        'its stretch was at ' || l.speed_kn || ' kn, where it is counted'
    FROM strike s JOIN leg l USING (leg_id) JOIN band b ON b.factor = 'speed-band' AND l.speed_kn >= b.lo
        AND (b.hi IS NULL OR l.speed_kn < b.hi)
    WHERE NOT (round(s.speed_kn, 1) >= b.lo AND (b.hi IS NULL OR round(s.speed_kn, 1) < b.hi))
        AND l.leg_id NOT IN (SELECT leg_id FROM leg_track)
    UNION ALL
    SELECT 'fish without a strike', file, sheet, "row", coalesce(species_logged, ''),
        'no strike row matches this fish: added as a strike'
    FROM strike s WHERE origin = 'fish' AND EXISTS (SELECT 1 FROM entry WHERE kind = 'strikes')
    UNION ALL
    SELECT 'odd speed', file, sheet, "row", speed_kn || ' kn', 'an unusual speed to troll at: kept as logged'
    FROM leg WHERE speed_kn < 1.5 OR speed_kn > 22
    UNION ALL
    SELECT "column" || ': read with a doubt', file, sheet, "row", cell, reason FROM reading_doubt
    UNION ALL
    SELECT 'long leg', file, sheet, "row", round(hours, 1) || ' h', 'a leg of more than 12 hours: is its end right?'
    FROM leg WHERE hours > 12
    UNION ALL
    SELECT 'odd date', coalesce(t.file, l.file, ''), coalesce(t.sheet, l.sheet, ''), coalesce(t."row", l."row", 0),
        strftime(o.date, '%Y-%m-%d'),
        'no other trip within 300 days: is the year right?'
    FROM odd_day o JOIN trip t USING (trip_id)
    LEFT JOIN (SELECT trip_id, arg_min(file, leg_id) AS file, arg_min(sheet, leg_id) AS sheet,
        arg_min("row", leg_id) AS "row" FROM leg GROUP BY trip_id) l ON l.trip_id = t.trip_id
    UNION ALL
    SELECT 'future date', coalesce(t.file, l.file, ''), coalesce(t.sheet, l.sheet, ''),
        coalesce(t."row", l."row", 0), strftime(t.date, '%Y-%m-%d'),
        'after the day on which the log was read'
    FROM trip t LEFT JOIN (SELECT trip_id, arg_min(file, leg_id) AS file, arg_min(sheet, leg_id) AS sheet,
        arg_min("row", leg_id) AS "row" FROM leg GROUP BY trip_id) l ON l.trip_id = t.trip_id
    WHERE t.date > (SELECT max(loaded_at) + INTERVAL 2 DAY FROM log)
)
, places AS ( -- the trip that a row of a log is of
    SELECT file, sheet, "row", min(trip_id) AS trip_id FROM (
        SELECT file, sheet, "row", trip_id FROM leg UNION ALL SELECT file, sheet, "row", trip_id FROM strike
        UNION ALL SELECT file, sheet, "row", trip_id FROM fish UNION ALL SELECT file, sheet, "row", trip_id FROM trip
        UNION ALL SELECT n.file, n.sheet, n."row", l.trip_id FROM line n JOIN leg l USING (leg_id)
    ) GROUP BY file, sheet, "row" HAVING count(DISTINCT trip_id) = 1
)
SELECT d.*, t.trip, t.boat FROM all_doubts d LEFT JOIN places USING (file, sheet, "row") LEFT
    JOIN trip t USING (trip_id)
ORDER BY "check", file, sheet, "row", found, reason
