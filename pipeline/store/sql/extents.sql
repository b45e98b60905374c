-- The days and boats that logs name: those of log $1, or of all where that is 0. A track
-- names the days from its first fix to its last.
SELECT log_id, (e.date - DATE '1970-01-01')::BIGINT AS day, coalesce(n.boat, e.boat, '') AS boat
FROM entry e LEFT JOIN boat_name n ON n.logged = e.boat WHERE $1 = 0 OR log_id = $1 GROUP BY ALL
UNION ALL
SELECT log_id, unnest(range(first_ms // 86400000, last_ms // 86400000 + 1)), '' FROM track WHERE first_ms IS NOT NULL AND ($1 = 0 OR log_id = $1)
ORDER BY ALL
