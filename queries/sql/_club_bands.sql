-- In place of the season file's own classes: those of every club summary. They are
-- never the user's, because two sets of edges would show the trips between them.
WITH band AS (
    SELECT factor, ord, lo, lead(lo) OVER (PARTITION BY factor ORDER BY ord) AS hi,
        CASE WHEN lead(lo) OVER (PARTITION BY factor ORDER BY ord) IS NULL THEN lo || ' and up'
            ELSE '[' || lo || ', ' || lead(lo) OVER (PARTITION BY factor ORDER BY ord) || ')' END AS level
    FROM (VALUES EDGES) edge(factor, ord, lo)
),
