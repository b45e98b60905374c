-- By log of the season file, the legs that it and log $1 have in common: those with the
-- same end and speed, those with others, those of another boat, those of one log in the
-- midst of a leg of the other, and days whose hours have no start in either.
WITH leg AS (
    SELECT log_id, boat, day, start_s, max(until_s) AS until_s, round(min(speed_kn), 1) AS speed_kn FROM told
    WHERE kind = 'hours' AND day IS NOT NULL AND start_s IS NOT NULL
        AND day IN (SELECT day FROM told WHERE log_id = $1) GROUP BY ALL
), pair AS (
    SELECT t.log_id, m.boat <> t.boat AS other_boat, m.day, m.start_s AS m_start, m.until_s AS m_until,
        t.start_s AS t_start, t.until_s AS t_until,
        abs(m.until_s - t.until_s) > 60 OR abs(m.speed_kn - t.speed_kn) > 0.15 AS differs,
        m.until_s IS NOT NULL AND m.speed_kn IS NOT NULL AND t.until_s IS NOT NULL AND t.speed_kn IS NOT NULL AS whole
    FROM leg m JOIN leg t ON t.day = m.day AND t.log_id <> m.log_id WHERE m.log_id = $1
), alike AS (
    SELECT log_id, count(*) FILTER (WHERE other_boat IS NOT TRUE AND differs IS NOT TRUE) AS same,
        count(*) FILTER (WHERE other_boat IS NOT TRUE AND differs) AS differ,
            count(*) FILTER (WHERE other_boat AND whole AND NOT differs) AS twin
    FROM pair WHERE m_start = t_start GROUP BY log_id
), lone AS (
    -- by a quarter of an hour, or half of the shorter: clocks are set by hand
    SELECT p.log_id, count(DISTINCT (p.day, p.m_start)) AS overlaps FROM pair p
    WHERE p.other_boat IS NOT TRUE AND p.m_start <> p.t_start
      AND least(p.m_until, p.t_until) - greatest(p.m_start, p.t_start) > least(900, (p.m_until - p.m_start) / 2,
          (p.t_until - p.t_start) / 2)
      AND (NOT EXISTS (SELECT 1 FROM leg x WHERE x.log_id = p.log_id AND x.day = p.day AND x.start_s = p.m_start)
        OR NOT EXISTS (SELECT 1 FROM leg x WHERE x.log_id = $1 AND x.day = p.day AND x.start_s = p.t_start))
    GROUP BY p.log_id
), bare AS (
    -- bites without hours are none of a log of hours
    SELECT log_id, boat, day, bool_or(duration_s IS NOT NULL) AS timed FROM told
    WHERE kind = 'hours' AND day IS NOT NULL AND start_s IS NULL AND leg IS NULL GROUP BY ALL
), loose AS (
    SELECT t.log_id, count(DISTINCT m.day) AS loose FROM bare m
        JOIN bare t ON t.day = m.day AND t.timed = m.timed AND (t.boat = m.boat) IS NOT FALSE
    WHERE m.log_id = $1 AND t.log_id <> $1 GROUP BY t.log_id
), mine AS (
    SELECT count(*) AS n FROM leg WHERE log_id = $1
), theirs AS (
    SELECT log_id, count(*) AS n FROM leg WHERE log_id <> $1 GROUP BY log_id
)
SELECT coalesce(t.log_id, o.log_id) AS log_id, coalesce(t.n, 0)::BIGINT AS legs,
    (SELECT n FROM mine)::BIGINT AS new_legs, coalesce(a.same, 0)::BIGINT AS same,
    coalesce(a.differ, 0)::BIGINT AS differ, coalesce(a.twin, 0)::BIGINT AS twin,
        coalesce(l.overlaps, 0)::BIGINT AS overlaps, coalesce(o.loose, 0)::BIGINT AS loose
FROM theirs t LEFT JOIN alike a USING (log_id) LEFT JOIN lone l USING (log_id) FULL JOIN loose o ON o.log_id = t.log_id
ORDER BY 1
