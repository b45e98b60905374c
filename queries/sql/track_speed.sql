-- Each trip's speed as logged beside that of its track: of the legs that both
-- tell of, means over the time that the track covers, of a leg its median. Stopped is
-- below 1 kn. Hours without a clock are of legs whose times are not logged, on a day
-- of which a track of the boat tells.
WITH stop AS (
    SELECT leg_id, sum(seconds) / 3600 AS stopped FROM leg_piece WHERE speed_kn < 1 GROUP BY leg_id
), clockless AS (
    SELECT l.trip_id, sum(l.hours) AS hours FROM leg l JOIN trip t USING (trip_id)
    WHERE l.start_at IS NULL AND EXISTS (SELECT 1 FROM track_piece p
        WHERE p.boat = t.boat AND p.at_utc >= t.date - INTERVAL 14 HOUR AND p.at_utc < t.date + INTERVAL 36 HOUR)
    GROUP BY ALL
), beside AS (
    SELECT l.trip_id, l.leg_id, l.hours, l.speed_kn, k.covered, k.median_kn, k.distance_nmi, k.turn_deg_min,
        l.hours * k.covered AS measured, s.stopped
    FROM leg l LEFT JOIN leg_track k USING (leg_id) LEFT JOIN stop s USING (leg_id)
)
SELECT t.trip, t.boat, strftime(t.date, '%Y-%m-%d') AS date, count(*) AS legs, count(b.covered) AS legs_with_track,
    round(coalesce(sum(b.measured), 0), 6) AS measured_hours,
    round(coalesce(sum(b.hours - coalesce(b.measured, 0)) FILTER (WHERE b.speed_kn IS NOT NULL), 0),
        6) AS remembered_hours,
    round(coalesce(sum(b.hours - coalesce(b.measured, 0)) FILTER (WHERE b.speed_kn IS NULL), 0), 6) AS unknown_hours,
    round(sum(b.speed_kn * b.measured) / sum(b.measured) FILTER (WHERE b.speed_kn IS NOT NULL), 6) AS logged_kn,
    round(sum(b.median_kn * b.measured) FILTER (WHERE b.speed_kn IS NOT NULL)
        / sum(b.measured) FILTER (WHERE b.speed_kn IS NOT NULL), 6) AS ran_kn,
    round(sum(b.distance_nmi), 6) AS distance_nmi,
    round(sum(b.turn_deg_min * b.measured) / sum(b.measured) FILTER (WHERE b.turn_deg_min IS NOT NULL),
        6) AS turn_deg_min,
    round(coalesce(sum(b.stopped), 0), 6) AS stopped_hours, round(coalesce(any_value(c.hours), 0), 6) AS clockless_hours
FROM trip t JOIN beside b USING (trip_id) LEFT JOIN clockless c USING (trip_id)
GROUP BY t.trip_id, t.trip, t.boat, t.date ORDER BY t.trip_id
