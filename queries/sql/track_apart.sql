-- Tracks of one boat that tell of the same time and are nautical miles apart then, by
-- the minute: the first of each, and the one that is used.
WITH used AS (
    SELECT p.boat, p.log_id, p.track_no, epoch_ms(p.at_utc) // 60000 AS minute, avg(p.lat) AS lat,
        any_value(p.lon) AS lon FROM track_piece p GROUP BY ALL
), told AS (
    SELECT coalesce(o.boat, (SELECT min(boat) FROM trip HAVING count(DISTINCT boat) = 1)) AS boat, f.log_id,
        f.track_no, (f.at_ms + coalesce(s.by_ms, 0)) // 60000 AS minute,
        avg(f.lat) AS lat, any_value(f.lon) AS lon
    FROM fix f JOIN log o USING (log_id) LEFT JOIN track_shift s USING (log_id, track_no) GROUP BY ALL
)
SELECT t.log_id, t.track_no, u.log_id AS used_log_id, u.track_no AS used_track_no, count(*) AS minutes,
    round(median(60 * sqrt((t.lat - u.lat) ** 2 + (least(abs(t.lon - u.lon),
        360 - abs(t.lon - u.lon)) * cos(radians(u.lat))) ** 2)), 1) AS nmi
FROM told t JOIN used u ON u.boat IS NOT DISTINCT FROM t.boat AND u.minute = t.minute
    AND (u.log_id, u.track_no) <> (t.log_id, t.track_no)
GROUP BY ALL HAVING nmi >= 2 AND minutes >= 10 ORDER BY ALL
