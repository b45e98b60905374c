-- Straight running both ways over the same ground in a trip: by cells of two
-- minutes of arc and eighths of the compass, where the speed logged is the same
-- to half a knot or the leg is. Half the difference of the two speeds is the
-- current along the way, if the boat was driven alike both ways.
WITH cell AS (
    SELECT l.trip_id, l.leg_id, l.speed_kn AS logged_kn, floor(p.lat * 30) AS y, floor(p.lon * 30) AS x,
        (floor((p.course_deg + 22.5) / 45) % 8)::INTEGER AS eighth, sum(p.seconds) AS seconds, sum(p.seconds * p.speed_kn) / sum(p.seconds) AS kn
    FROM leg_piece p JOIN leg l USING (leg_id) WHERE abs(p.turn_deg_min) < 45 AND p.course_deg IS NOT NULL
    GROUP BY ALL
), shared AS (
    SELECT a.trip_id, a.eighth, a.y, a.x, least(a.seconds, b.seconds) AS seconds, a.kn AS out_kn, b.kn AS back_kn
    FROM cell a JOIN cell b ON b.trip_id = a.trip_id AND b.y = a.y AND b.x = a.x AND a.eighth < 4 AND b.eighth = a.eighth + 4
        AND (a.leg_id = b.leg_id OR abs(a.logged_kn - b.logged_kn) <= 0.5)
), way AS (
    SELECT trip_id, eighth, count(DISTINCT (y, x)) AS cells, sum(seconds) / 60 AS minutes,
        sum(seconds * out_kn) / sum(seconds) AS out_kn, sum(seconds * back_kn) / sum(seconds) AS back_kn
    FROM shared GROUP BY trip_id, eighth HAVING sum(seconds) >= 300
)
SELECT t.trip, t.boat, strftime(t.date, '%Y-%m-%d') AS date, w.eighth * 45 AS course_deg, round(w.out_kn, 6) AS out_kn, round(w.back_kn, 6) AS back_kn,
    round(abs(w.out_kn - w.back_kn) / 2, 6) AS current_kn, CASE WHEN w.out_kn >= w.back_kn THEN w.eighth * 45 ELSE w.eighth * 45 + 180 END AS set_deg,
    round(w.minutes, 6) AS minutes, w.cells
FROM way w JOIN trip t USING (trip_id) ORDER BY t.trip_id, w.eighth
