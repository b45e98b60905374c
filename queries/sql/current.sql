-- The minutes of straight running on legs, in order of time: speed over ground
-- and course as a sum of seconds times its unit vector; the place is that of the
-- minute's first piece. Of fixes far apart the rate of turn is not known: their
-- course is that from fix to fix.
SELECT l.trip_id, t.trip, t.boat, strftime(t.date, '%Y-%m-%d') AS date, l.leg_id, l.speed_kn AS logged_kn,
    epoch_ms(p.at_utc) // 60000 AS minute,
    sum(p.seconds) AS seconds, sum(p.seconds * p.speed_kn) / sum(p.seconds) AS kn,
    sum(p.seconds * cos(radians(p.course_deg))) AS north, sum(p.seconds * sin(radians(p.course_deg))) AS east,
    arg_min(p.lat, p.at_utc) AS lat_deg, arg_min(p.lon, p.at_utc) AS lon_deg
FROM leg_piece p JOIN leg l USING (leg_id) JOIN trip t USING (trip_id)
WHERE p.course_deg IS NOT NULL AND coalesce(abs(p.turn_deg_min), 0) < 45
GROUP BY ALL ORDER BY l.trip_id, minute, l.leg_id
