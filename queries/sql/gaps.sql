-- Legs with the smallest gap between the setbacks of two lines out together,
-- and whether lines tangled. A leg that says nothing of tangles had none, where
-- its log tells of tangles elsewhere.
WITH placed AS (
    SELECT leg_id, setback_m - lag(setback_m) OVER (PARTITION BY leg_id ORDER BY setback_m, line_id) AS gap
    FROM line WHERE setback_m IS NOT NULL
), gap AS (
    SELECT leg_id, round(min(gap), 6) AS gap_m FROM placed WHERE gap IS NOT NULL GROUP BY leg_id
), telling AS (
    SELECT DISTINCT log_id FROM leg WHERE tangle
)
SELECT g.gap_m, l.hours, coalesce(l.tangle, false) AS tangle
FROM gap g JOIN leg l USING (leg_id)
WHERE l.tangle IS NOT NULL OR l.log_id IN (SELECT log_id FROM telling)
ORDER BY l.leg_id
