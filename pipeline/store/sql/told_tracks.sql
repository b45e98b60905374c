-- By log of the season file and day, pieces of tracks that log $1 has too: the same ten
-- seconds at the same place, to two metres. Another receiver on the same boat is further off.
WITH mine AS (
    SELECT at_ms // 10000 AS tick, strftime(make_timestamp(at_ms * 1000), '%Y-%m-%d') AS day, lat, lon FROM fix
        WHERE log_id = $1
), theirs AS (
    SELECT log_id, at_ms // 10000 AS tick, strftime(make_timestamp(at_ms * 1000), '%Y-%m-%d') AS day, lat, lon FROM fix
    WHERE log_id <> $1 AND at_ms // 10000 IN (SELECT tick FROM mine)
), near AS (
    SELECT DISTINCT log_id FROM theirs
), found AS (
    SELECT t.log_id, t.day, count(DISTINCT tick) AS found FROM theirs t JOIN mine m USING (tick)
        WHERE abs(t.lat - m.lat) < 0.00002 AND abs(t.lon - m.lon) < 0.00003 GROUP BY ALL
), before AS (
    SELECT f.log_id, strftime(make_timestamp(f.at_ms * 1000), '%Y-%m-%d') AS day,
        count(DISTINCT f.at_ms // 10000) AS before
    FROM fix f JOIN near USING (log_id) GROUP BY ALL
), now AS (
    SELECT near.log_id, mine.day, count(DISTINCT tick) AS now FROM mine CROSS JOIN near GROUP BY ALL
)
SELECT coalesce(b.log_id, w.log_id) AS log_id, coalesce(b.day, w.day) AS day,
    coalesce(b.before, 0)::BIGINT AS before, coalesce(w.now, 0)::BIGINT AS now,
    coalesce(f.found, 0)::BIGINT AS found, coalesce(f.found, 0)::BIGINT AS equal
FROM before b FULL JOIN now w ON w.log_id = b.log_id AND w.day = b.day LEFT
    JOIN found f ON f.log_id = b.log_id AND f.day = b.day
ORDER BY 1, 2
