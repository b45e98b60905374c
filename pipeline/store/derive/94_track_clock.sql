-- Tracks that are not where, or when, they say. A track is of the boat
-- named for its log, else of the only boat that the season knows.
CREATE OR REPLACE TEMP TABLE track_boat AS
SELECT l.log_id, coalesce(l.boat, (SELECT min(boat) FROM trip HAVING count(DISTINCT boat) = 1)) AS boat
FROM log l WHERE l.log_id IN (SELECT log_id FROM track);

-- The files of tracks by when they were changed, in whatever order they were loaded.
CREATE OR REPLACE TEMP TABLE track_place AS
SELECT log_id, row_number() OVER (ORDER BY changed_at NULLS FIRST, lower(name) DESC, folder DESC, sha256 DESC,
    log_id) AS place FROM log;

-- Tracks with latitude and longitude changed over: as they stand they are far from what
-- the boat's legs log, or from the sun of the legs' zone, and changed back they are near.
-- Degrees: 20 are another ground, 8 the same one. Zones are 15 wide by the sun, and by law up
-- to three hours off it (IANA time zone database: western China).
INSERT INTO track_astray BY NAME
WITH place AS (
    SELECT log_id, track_no, avg(lat) AS lat, median(lon) AS lon FROM fix GROUP BY ALL
), legs AS (
    SELECT t.boat, avg(l.lat) AS lat, median(l.lon) AS lon,
        median(date_diff('minute', l.start_utc, l.start_at)) / 4 AS sun
    FROM leg l JOIN trip t USING (trip_id) GROUP BY t.boat
), off AS (
    SELECT p.log_id, p.track_no, p.lon, g.lat IS NOT NULL AND g.lon IS NOT NULL AS placed,
        greatest(abs(p.lat - g.lat), 180 - abs(180 - abs(p.lon - g.lon))) AS as_stands,
            greatest(abs(p.lon - g.lat), 180 - abs(180 - abs(p.lat - g.lon))) AS changed,
        180 - abs(180 - abs(p.lon - g.sun)) AS sun_as_stands, 180 - abs(180 - abs(p.lat - g.sun)) AS sun_changed
    FROM place p JOIN track_boat b USING (log_id) JOIN legs g ON g.boat = b.boat
)
SELECT log_id, track_no FROM off
WHERE abs(lon) <= 90 AND CASE WHEN placed THEN as_stands > 20 AND changed < 8 ELSE sun_as_stands > 60
    AND sun_changed < 45 END
ORDER BY ALL;

-- Where the tracks of a boat that has several are under way, each five minutes.
CREATE OR REPLACE TEMP TABLE track_mark AS
WITH several AS (
    SELECT boat FROM track JOIN track_boat USING (log_id) WHERE unused = '' GROUP BY boat HAVING count(*) > 1
)
SELECT b.boat, f.log_id, f.track_no, f.at_ms // 300000 AS mark, f.lat, f.lon, f.run_kn
FROM fix f JOIN track_boat b USING (log_id) JOIN several s ON s.boat IS NOT DISTINCT FROM b.boat
WHERE f.at_ms % 300000 < 10000 AND f.run_kn >= 3
    AND (f.log_id, f.track_no) NOT IN (SELECT (log_id, track_no) FROM track_astray);

-- How well a track as it is fits the boat's legs, by marks: as package queries has it
-- by minutes (trackshift.go).
CREATE OR REPLACE TEMP TABLE track_fit AS
SELECT m.log_id, m.track_no,
    sum(CASE WHEN abs(m.run_kn - l.speed_kn) <= 2 OR l.speed_kn IS NULL AND m.run_kn <= 18 THEN 1 ELSE -1 END) AS marks
FROM track_mark m JOIN trip t ON t.boat = m.boat JOIN leg l ON l.trip_id = t.trip_id
    AND m.mark * 300000 >= epoch_ms(l.start_utc) AND m.mark * 300000 < epoch_ms(l.end_utc)
GROUP BY ALL;

-- Two tracks that are within a tenth of a nautical mile of each other for nine tenths of
-- half an hour or more under way, one so many half hours behind the other: one boat, one way,
-- two clocks. The one that fits the legs worse is put on the other's clock; where the
-- legs do not tell, by ten minutes, that of the file changed first.
INSERT INTO track_shift BY NAME
WITH pair AS (
    SELECT a.log_id, a.track_no, b.log_id AS to_log, b.track_no AS to_no,
        unnest(generate_series(-28, 28)) AS half_hours,
        a.first_ms, a.last_ms, b.first_ms AS to_first, b.last_ms AS to_last
    FROM track a JOIN track_boat x ON x.log_id = a.log_id
    JOIN track b ON (b.log_id, b.track_no) <> (a.log_id, a.track_no)
    JOIN track_boat y ON y.log_id = b.log_id AND y.boat IS NOT DISTINCT FROM x.boat
), apart AS (
    SELECT p.log_id, p.track_no, p.to_log, p.to_no, p.half_hours, count(*) AS marks,
        count(*) FILTER (60 * sqrt((m.lat - o.lat) ** 2
            + (least(abs(m.lon - o.lon), 360 - abs(m.lon - o.lon)) * cos(radians(m.lat))) ** 2) < 0.1) AS near
    FROM pair p JOIN track_mark m ON m.log_id = p.log_id AND m.track_no = p.track_no
    JOIN track_mark o ON o.log_id = p.to_log AND o.track_no = p.to_no AND o.mark = m.mark + 6 * p.half_hours
    WHERE p.first_ms + p.half_hours * 1800000 <= p.to_last AND p.last_ms + p.half_hours * 1800000 >= p.to_first
    GROUP BY ALL HAVING marks >= 6 AND near >= 0.9 * marks
), best AS (
    SELECT log_id, track_no, to_log, to_no, first(half_hours
        ORDER BY near DESC, abs(half_hours), half_hours) AS half_hours FROM apart GROUP BY ALL
), judged AS (
    SELECT b.*, coalesce(f.marks, 0) AS marks, coalesce(g.marks, 0) AS to_marks, p.place, q.place AS to_place
    FROM best b LEFT JOIN track_fit f ON f.log_id = b.log_id AND f.track_no = b.track_no
    LEFT JOIN track_fit g ON g.log_id = b.to_log AND g.track_no = b.to_no
    JOIN track_place p ON p.log_id = b.log_id JOIN track_place q ON q.log_id = b.to_log
    WHERE b.half_hours <> 0
)
SELECT log_id, track_no, first(half_hours * 1800000 ORDER BY to_marks DESC, to_place DESC, to_no DESC) AS by_ms,
    max(to_marks) >= any_value(marks) + 2 AS told
FROM judged
WHERE to_marks >= marks + 2 OR abs(to_marks - marks) < 2 AND (to_place, to_no) > (place, track_no)
GROUP BY log_id, track_no ORDER BY log_id, track_no;
