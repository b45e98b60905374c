-- Effort and strikes by cells of $1 minutes of arc, named by their south-west
-- corner: of the legs that a track covers.
WITH lines AS (
    SELECT leg_id, sum(line_hours) / nullif(max(hours), 0) AS lines FROM effort GROUP BY leg_id
), run AS (
    SELECT floor(p.lat * 60 / $1) * $1 / 60 AS lat, floor(p.lon * 60 / $1) * $1 / 60 AS lon, l.trip_id,
        p.seconds / 3600 AS hours, p.seconds / 3600 * coalesce(n.lines, 0) AS line_hours,
            p.seconds / 3600 * p.speed_kn AS nmi, 0 AS strikes
    FROM leg_piece p JOIN leg l USING (leg_id) LEFT JOIN lines n USING (leg_id)
), struck AS (
    SELECT floor(p.lat * 60 / $1) * $1 / 60 AS lat, floor(p.lon * 60 / $1) * $1 / 60 AS lon, s.trip_id, 0, 0, 0, 1
    FROM strike s ASOF JOIN leg_piece p ON p.leg_id = s.leg_id AND p.at_utc <= s.strike_utc
    WHERE date_diff('second', p.at_utc, s.strike_utc) < 60
)
SELECT round(lat, 6) AS lat_deg, round(lon, 6) AS lon_deg, count(DISTINCT trip_id) AS trips,
    round(sum(hours), 6) AS boat_hours,
    round(sum(line_hours), 6) AS line_hours, round(sum(nmi), 6) AS distance_nmi, sum(strikes)::BIGINT AS strikes
FROM (SELECT * FROM run UNION ALL SELECT * FROM struck) GROUP BY 1, 2 ORDER BY 1 DESC, 2
