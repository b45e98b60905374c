-- In place of the season file's own classes: those of every club summary. They are
-- never the user's, because two sets of edges would show the trips between them.
WITH band AS (
    SELECT factor, ord, lo, lead(lo) OVER (PARTITION BY factor ORDER BY ord) AS hi,
        CASE WHEN lead(lo) OVER (PARTITION BY factor ORDER BY ord) IS NULL THEN lo || ' and up'
            ELSE '[' || lo || ', ' || lead(lo) OVER (PARTITION BY factor ORDER BY ord) || ')' END AS level
    FROM (
        SELECT 'speed-band' AS factor, unnest(range(7)) AS ord, unnest([0, 6, 8, 10, 12, 14, 16]) AS lo
        UNION ALL
        SELECT 'lure-weight', unnest(range(7)), unnest([0, 250, 500, 750, 1000, 1250, 1500])
    )
),
