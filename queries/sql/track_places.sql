-- Where each track is on average, and where its boat is by what its legs log: their
-- positions, and the hours of their zone ahead of UTC.
WITH place AS (
    SELECT log_id, track_no, avg(lat) AS lat, median(lon) AS lon FROM fix GROUP BY ALL
), legs AS (
    SELECT t.boat, avg(l.lat) AS lat, median(l.lon) AS lon, median(date_diff('minute', l.start_utc, l.start_at)) / 60 AS zone_hours
    FROM leg l JOIN trip t USING (trip_id) GROUP BY t.boat
)
SELECT p.log_id, p.track_no, p.lat AS lat_deg, p.lon AS lon_deg, g.lat AS leg_lat_deg, g.lon AS leg_lon_deg, g.zone_hours
FROM place p JOIN log o USING (log_id)
JOIN legs g ON g.boat = coalesce(o.boat, (SELECT min(boat) FROM trip HAVING count(DISTINCT boat) = 1))
ORDER BY p.log_id, p.track_no
