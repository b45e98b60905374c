-- Legs whose instants are known, with a position where the leg or its trip has
-- one. The mean is of directions, so that it holds across 180 degrees.
WITH middle AS (
    SELECT trip_id, avg(lat) AS lat, degrees(atan2(avg(sin(radians(lon))), avg(cos(radians(lon))))) AS lon
    FROM leg WHERE lat IS NOT NULL AND lon IS NOT NULL GROUP BY trip_id
)
SELECT l.leg_id, l.start_utc, l.end_utc, l.lat IS NULL OR l.lon IS NULL AS from_trip,
    CASE WHEN l.lat IS NULL OR l.lon IS NULL THEN m.lat ELSE l.lat END AS lat,
    CASE WHEN l.lat IS NULL OR l.lon IS NULL THEN m.lon ELSE l.lon END AS lon
FROM leg l LEFT JOIN middle m USING (trip_id)
WHERE l.start_utc IS NOT NULL AND l.end_utc IS NOT NULL ORDER BY l.leg_id
