-- The days and boats that logs name, and when rows of theirs begin and end, of logs that are
-- not large: those of log $1, or of all where that is 0. A track names the days from its
-- first fix to its last.
WITH row AS (
    SELECT e.*, l.rows_kept > 100000 AS large, coalesce(e.end_s, e.start_s + e.duration_s::BIGINT) AS until_s
        FROM entry e JOIN log l USING (log_id)
)
SELECT log_id, (r.date - DATE '1970-01-01')::BIGINT AS day, coalesce(n.boat, r.boat, '') AS boat,
    CASE WHEN NOT large AND until_s IS NOT NULL THEN start_s END AS start_s, CASE WHEN NOT large
        AND start_s IS NOT NULL THEN until_s END AS until_s, large
FROM row r LEFT JOIN boat_name n ON n.logged = r.boat WHERE $1 = 0 OR log_id = $1 GROUP BY ALL
UNION ALL
SELECT log_id, unnest(range(first_ms // 86400000, last_ms // 86400000 + 1)), '', NULL, NULL, false FROM track
    WHERE first_ms IS NOT NULL AND ($1 = 0 OR log_id = $1)
ORDER BY ALL
