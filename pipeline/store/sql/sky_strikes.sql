-- Every strike with its leg, its instant and its trip's mean position.
WITH middle AS (
    SELECT trip_id, avg(lat) AS lat, degrees(atan2(avg(sin(radians(lon))), avg(cos(radians(lon))))) AS lon
    FROM leg WHERE lat IS NOT NULL AND lon IS NOT NULL GROUP BY trip_id
)
SELECT s.strike_id, s.leg_id, s.strike_utc, m.lat, m.lon
FROM strike s LEFT JOIN middle m USING (trip_id) ORDER BY s.strike_id
