-- Tracks and legs.

-- The receiver's own speeds are taken where they agree with its positions: a
-- speed in another unit than the file's format has, or of another sensor, does not.
CREATE OR REPLACE TEMP TABLE said_agrees AS
SELECT log_id, track_no FROM fix WHERE said_kn IS NOT NULL AND run_kn >= 3
GROUP BY log_id, track_no HAVING median(said_kn / run_kn) BETWEEN 0.9 AND 1.1 AND count(*) >= 6;

-- The pieces as the receivers told them, on the clock that they are put on. A view: a
-- season of fixes is not copied.
CREATE OR REPLACE TEMP VIEW track_told AS
SELECT b.boat, f.log_id, o.place, f.track_no, f.stretch, f.at_ms + coalesce(s.by_ms, 0) AS at_ms,
    f.at_ms + coalesce(s.by_ms, 0) + round(f.seconds * 1000)::BIGINT AS end_ms, f.lat, f.lon,
    -- rounded to 0.1 kn, so that a speed on a band's edge is not a hair below it
    round(CASE WHEN a.log_id IS NOT NULL THEN coalesce(f.said_kn, f.run_kn) ELSE f.run_kn END, 1) AS speed_kn,
    f.err_kn, f.course_deg, f.turn_deg_min, f.gap_s
FROM fix f JOIN track_boat b USING (log_id) JOIN track_place o USING (log_id)
LEFT JOIN track_shift s USING (log_id, track_no) LEFT JOIN said_agrees a USING (log_id, track_no)
WHERE NOT EXISTS (SELECT 1 FROM track_astray y WHERE y.log_id = f.log_id AND y.track_no = f.track_no);

-- Ten seconds of a boat of which more than one piece tells: of two receivers, of
-- the same track again, or on both sides of a break. In few ten minutes are there several stretches.
CREATE OR REPLACE TEMP TABLE contested AS
WITH several AS (
    SELECT boat, at_ms // 600000 AS spell FROM track_told GROUP BY ALL
    HAVING min(log_id) <> max(log_id) OR min(track_no) <> max(track_no) OR min(stretch) <> max(stretch)
)
SELECT t.boat, t.at_ms // 10000 AS tick FROM track_told t JOIN several s ON s.boat IS NOT DISTINCT
    FROM t.boat AND s.spell = t.at_ms // 600000
GROUP BY ALL HAVING count(*) > 1;

-- Where they tell of the same time the better stretch is used, ten minutes by ten
-- minutes: that of which the speed is known best. What is not known is the noise,
-- the median standard error of its speeds, and what the boat does between two fixes, some
-- 0.02 kn for each second between them (simulated: TestAccuracy in package
-- track). A receiver whose position does not change at all has lost it. Of two alike,
-- to 0.05 kn, the file changed last: its clock may have been put right.
CREATE OR REPLACE TEMP TABLE stretch_error AS
SELECT log_id, track_no, stretch, at_ms // 600000 AS spell, median(err_kn) AS noise_kn,
    coalesce(noise_kn, 0.3) + 0.02 * sum(gap_s * (end_ms - at_ms)) / sum(end_ms - at_ms)
        + CASE WHEN min(lat) = max(lat) AND min(lon) = max(lon) THEN 10 ELSE 0 END AS error_kn
FROM track_told JOIN (SELECT DISTINCT boat, tick // 60 AS spell FROM contested) c ON c.boat IS NOT DISTINCT
    FROM track_told.boat AND c.spell = at_ms // 600000
GROUP BY ALL;

CREATE OR REPLACE TEMP TABLE rival AS
SELECT row_number() OVER ()::INTEGER AS piece, t.*, t.at_ms // 10000 AS tick, round(20 * e.error_kn) / 20 AS error_kn
FROM track_told t JOIN contested c ON c.boat IS NOT DISTINCT FROM t.boat AND c.tick = t.at_ms // 10000
JOIN stretch_error e ON e.log_id = t.log_id AND e.track_no = t.track_no AND e.stretch = t.stretch
    AND e.spell = t.at_ms // 600000;

-- Each second once. Time of which one piece tells is taken as it is.
INSERT INTO track_piece BY NAME
SELECT t.boat, t.log_id, t.track_no, make_timestamp(t.at_ms * 1000) AS at_utc, (t.end_ms - t.at_ms) / 1000.0 AS seconds,
    t.lat, t.lon, t.speed_kn, t.err_kn, t.course_deg, t.turn_deg_min
FROM track_told t WHERE NOT EXISTS (SELECT 1 FROM contested c WHERE c.boat IS NOT DISTINCT
    FROM t.boat AND c.tick = t.at_ms // 10000);

-- Contested time is cut where a piece begins or ends.
INSERT INTO track_piece BY NAME
WITH cut AS (
    SELECT DISTINCT boat, tick, unnest([at_ms, end_ms]) AS at FROM rival
), slice AS (
    SELECT boat, tick, at, lead(at) OVER (PARTITION BY boat, tick ORDER BY at) AS until FROM cut
), best AS (
    SELECT s.at, s.until, first(r.piece ORDER BY r.error_kn, r.place DESC, r.track_no, r.stretch, r.at_ms) AS piece
    FROM slice s JOIN rival r ON r.boat IS NOT DISTINCT
        FROM s.boat AND r.tick = s.tick AND r.at_ms <= s.at AND r.end_ms >= s.until
    GROUP BY s.boat, s.at, s.until
)
SELECT r.boat, r.log_id, r.track_no, make_timestamp(b.at * 1000) AS at_utc, (b.until - b.at) / 1000.0 AS seconds,
    r.lat, r.lon, r.speed_kn, r.err_kn, r.course_deg, r.turn_deg_min
FROM best b JOIN rival r USING (piece);

INSERT INTO leg_piece BY NAME
WITH leg_hour AS (
    SELECT l.leg_id, t.boat, l.start_utc, l.end_utc,
        unnest(generate_series(date_trunc('hour', l.start_utc), l.end_utc, INTERVAL 1 HOUR)) AS hour
    FROM leg l JOIN trip t USING (trip_id) WHERE l.start_utc IS NOT NULL AND l.hours > 0
        AND EXISTS (SELECT 1 FROM track_piece)
), held AS (
    SELECT h.leg_id, p.*, date_diff('millisecond', greatest(p.at_utc, h.start_utc),
        least(p.at_utc + to_milliseconds((p.seconds * 1000)::BIGINT), h.end_utc)) / 1000.0 AS part
    FROM leg_hour h JOIN track_piece p ON p.boat = h.boat AND date_trunc('hour', p.at_utc) = h.hour
)
SELECT leg_id, at_utc, part AS seconds, lat, lon, speed_kn, err_kn, course_deg, turn_deg_min FROM held WHERE part > 0;

-- The time of each leg that is covered, by speed; never more than the leg.
CREATE OR REPLACE TEMP TABLE leg_covered AS
SELECT g.leg_id, sum(p.seconds) AS seconds, greatest(sum(p.seconds), any_value(g.hours) * 3600) AS whole,
    any_value(g.speed_kn) AS logged_kn
FROM leg_piece p JOIN leg g USING (leg_id) GROUP BY g.leg_id;

INSERT INTO leg_speed BY NAME
WITH part AS (
    SELECT p.leg_id, p.speed_kn, p.seconds / c.whole AS share, p.seconds / c.whole AS measured FROM leg_piece p
        JOIN leg_covered c USING (leg_id)
    UNION ALL
    SELECT leg_id, logged_kn, 1 - seconds / whole, 0 FROM leg_covered WHERE whole - seconds > 1e-3
)
SELECT leg_id, speed_kn, sum(share) AS share, sum(measured) AS measured FROM part GROUP BY ALL
    ORDER BY leg_id, speed_kn NULLS LAST;

INSERT INTO leg_track BY NAME
WITH run AS (
    SELECT p.leg_id, sum(p.seconds) AS seconds, quantile_disc(p.speed_kn, 0.5) AS median_kn,
        sum(p.seconds * p.speed_kn) / 3600 AS distance_nmi,
        sum(p.seconds * abs(p.turn_deg_min)) / sum(p.seconds) FILTER (WHERE p.turn_deg_min IS NOT NULL) AS turn_deg_min
    FROM leg_piece p GROUP BY p.leg_id
)
SELECT r.leg_id, r.seconds / c.whole AS covered, r.median_kn,
    (r.distance_nmi * 3600 + (c.whole - c.seconds) * coalesce(c.logged_kn, 0)) / c.whole AS mean_kn,
    r.distance_nmi, r.turn_deg_min
FROM run r JOIN leg_covered c USING (leg_id) ORDER BY r.leg_id;

-- 45 degrees a minute: package track's TurningRate.
INSERT INTO leg_turn BY NAME
SELECT leg_id, turning, sum(share) AS share FROM (
    SELECT p.leg_id, CASE WHEN abs(p.turn_deg_min) >= 45 THEN 'turning' ELSE 'straight' END AS turning,
        p.seconds / c.whole AS share
    FROM leg_piece p JOIN leg_covered c USING (leg_id) WHERE p.turn_deg_min IS NOT NULL
) GROUP BY ALL ORDER BY leg_id, turning;

-- The minute before a strike, within its leg: at the leg's start the first piece
-- stands for it. quantile_disc is a speed that was run, so that the strike is in
-- a band that has effort of its leg.
INSERT INTO strike_track BY NAME
WITH minute AS (
    SELECT s.strike_id, p.speed_kn, p.err_kn, p.turn_deg_min
    FROM strike s JOIN leg_piece p ON p.leg_id = s.leg_id
    WHERE p.at_utc < greatest(s.strike_utc, (SELECT min(f.at_utc) + INTERVAL 1 SECOND FROM leg_piece f
        WHERE f.leg_id = s.leg_id))
      AND p.at_utc > s.strike_utc - INTERVAL 70 SECOND AND p.at_utc <= s.strike_utc + INTERVAL 10 SECOND
), before AS (
    SELECT strike_id, quantile_disc(speed_kn, 0.5) AS speed_kn, sqrt(avg(err_kn * err_kn)) AS err_kn,
        count(*) AS pieces,
        CASE WHEN median(abs(turn_deg_min)) >= 45 THEN 'turning'
            WHEN count(turn_deg_min) > 0 THEN 'straight' END AS turning
    FROM minute GROUP BY strike_id
), longest_turn AS (
    SELECT leg_id, first(turning ORDER BY share DESC, turning) AS turning FROM leg_turn GROUP BY leg_id
)
SELECT s.strike_id, coalesce(b.speed_kn, CASE WHEN k.covered >= 0.5 THEN k.median_kn ELSE g.speed_kn
    END) AS speed_kn, b.err_kn,
    coalesce(b.turning, t.turning) AS turning, coalesce(b.pieces, 0) AS pieces
FROM strike s JOIN leg_track k USING (leg_id) JOIN leg g USING (leg_id) LEFT JOIN longest_turn t USING (leg_id) LEFT
    JOIN before b USING (strike_id)
ORDER BY s.strike_id;
