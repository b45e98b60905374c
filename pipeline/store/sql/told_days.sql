-- By log of the season file and day, rows of the kinds that log $1 has too: before in that
-- log, now in $1, found again by what they are of, and equal in every cell. Only of logs
-- that have a row or a day in common with $1.
WITH mine AS (
    SELECT kind, day, key, whole, count(*) AS n FROM told WHERE log_id = $1 GROUP BY ALL
), theirs AS (
    SELECT log_id, kind, day, key, whole, count(*) AS n FROM told
    WHERE log_id <> $1 AND kind IN (SELECT kind FROM mine) GROUP BY ALL
), near AS (
    SELECT DISTINCT t.log_id FROM theirs t WHERE t.key IN (SELECT key FROM mine)
        OR t.day IN (SELECT day FROM mine WHERE day IS NOT NULL)
), mine_key AS (
    SELECT kind, day, key, sum(n) AS n FROM mine GROUP BY ALL
), found AS (
    SELECT t.log_id, t.day, sum(least(t.n, m.n)) AS found
    FROM (SELECT log_id, kind, day, key, sum(n) AS n FROM theirs GROUP BY ALL) t JOIN mine_key m USING (kind, key)
        GROUP BY ALL
), equal AS (
    SELECT t.log_id, t.day, sum(least(t.n, m.n)) AS equal FROM theirs t JOIN mine m USING (kind, key, whole)
        GROUP BY ALL
), before AS (
    SELECT log_id, day, sum(n) AS before FROM theirs WHERE log_id IN (SELECT log_id FROM near) GROUP BY ALL
), shared_kind AS (
    SELECT DISTINCT log_id, kind FROM theirs WHERE log_id IN (SELECT log_id FROM near)
), now AS (
    SELECT s.log_id, m.day, sum(m.n) AS now FROM mine_key m JOIN shared_kind s USING (kind) GROUP BY ALL
)
SELECT coalesce(b.log_id, w.log_id) AS log_id, coalesce(strftime(coalesce(b.day, w.day), '%Y-%m-%d'), '') AS day,
    coalesce(b.before, 0)::BIGINT AS before, coalesce(w.now, 0)::BIGINT AS now,
        coalesce(f.found, 0)::BIGINT AS found, coalesce(q.equal, 0)::BIGINT AS equal
FROM before b FULL JOIN now w ON w.log_id = b.log_id AND w.day IS NOT DISTINCT FROM b.day
LEFT JOIN found f ON f.log_id = b.log_id AND f.day IS NOT DISTINCT FROM b.day
LEFT JOIN equal q ON q.log_id = b.log_id AND q.day IS NOT DISTINCT FROM b.day
ORDER BY 1, 2
