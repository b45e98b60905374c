-- The tracks, what was found in them, and the legs that each meets.
WITH met AS (
    SELECT p.log_id, p.track_no, count(DISTINCT g.leg_id) AS legs, sum(g.seconds) / 3600 AS hours
    FROM track_piece p JOIN leg_piece g ON g.at_utc = p.at_utc JOIN leg l USING (leg_id)
        JOIN trip t ON t.trip_id = l.trip_id AND t.boat = p.boat
    GROUP BY ALL
)
SELECT l.label AS file, k.member, k.format,
    coalesce(l.boat, (SELECT min(boat) FROM trip HAVING count(DISTINCT boat) = 1)) AS boat,
    strftime(make_timestamp(k.first_ms * 1000), '%Y-%m-%dT%H:%M:%SZ') AS first_utc,
        strftime(make_timestamp(k.last_ms * 1000), '%Y-%m-%dT%H:%M:%SZ') AS last_utc,
    k.fixes, k.used, round(k.covered_s / 3600, 6) AS hours, round(k.stopped_s / 3600, 6) AS stopped_hours,
    k.gaps, round(k.gap_s / 3600, 6) AS gap_hours, k.breaks, k.jumps, k.repeated, k.reordered, k.late,
    coalesce(m.legs, 0) AS legs, round(coalesce(m.hours, 0), 6) AS leg_hours, k.clock_s, k.joined, k.dropouts,
    round(k.dropout_s / 3600, 6) AS dropout_hours, round(k.loose_s / 3600, 6) AS loose_hours, k.unused, k.log_id,
        k.track_no,
    coalesce(s.by_ms / 1000, 0) AS moved_s, coalesce(s.told, false) AS moved_told,
    EXISTS (SELECT 1 FROM track_astray y WHERE y.log_id = k.log_id AND y.track_no = k.track_no) AS changed_over
FROM track k JOIN log l USING (log_id) LEFT JOIN met m USING (log_id, track_no) LEFT
    JOIN track_shift s USING (log_id, track_no)
ORDER BY l.label, k.log_id, k.track_no
