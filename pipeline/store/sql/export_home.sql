-- Where each row belongs: the season (the year of its trip's day) and the boat. What
-- no trip, date or boat is known of is in season and boat unknown.
CREATE OR REPLACE TEMP VIEW home_trip_id AS
SELECT t.trip_id, coalesce(strftime(coalesce(t.date, min(l.start_at)::DATE), '%Y'), 'unknown') AS home_season,
    t.boat AS home_boat
FROM main.trip t LEFT JOIN main.leg l USING (trip_id) GROUP BY t.trip_id, t.date, t.boat;
CREATE OR REPLACE TEMP VIEW home_leg_id AS
SELECT l.leg_id, h.home_season, h.home_boat FROM main.leg l JOIN home_trip_id h USING (trip_id);
CREATE OR REPLACE TEMP VIEW home_strike_id AS
SELECT s.strike_id, h.home_season, h.home_boat FROM main.strike s JOIN home_trip_id h USING (trip_id);
CREATE OR REPLACE TEMP VIEW home_fish_id AS
SELECT f.fish_id, h.home_season, h.home_boat FROM main.fish f JOIN home_trip_id h USING (trip_id);
-- A row of a log: where what it made belongs, else where the one trip of its name
-- does, else its own date and boat.
CREATE OR REPLACE TEMP VIEW home_entry AS
WITH made AS (
    SELECT log_id, sheet, "row", trip_id FROM main.trip
    UNION ALL SELECT log_id, sheet, "row", trip_id FROM main.leg
    UNION ALL SELECT n.log_id, n.sheet, n."row", l.trip_id FROM main.line n JOIN main.leg l USING (leg_id)
    UNION ALL SELECT log_id, sheet, "row", trip_id FROM main.strike
    UNION ALL SELECT log_id, sheet, "row", trip_id FROM main.fish
), of_row AS (
    SELECT log_id, sheet, "row", min(trip_id) AS trip_id FROM made GROUP BY ALL
), of_name AS (
    SELECT t.trip, min(h.home_season) AS home_season, min(h.home_boat) AS home_boat FROM main.trip t
        JOIN home_trip_id h USING (trip_id)
    GROUP BY t.trip HAVING count(DISTINCT (h.home_season, h.home_boat)) = 1
)
SELECT e.log_id, e.sheet_no, e."row", min(coalesce(h.home_season, n.home_season,
    strftime(e.date, '%Y'))) AS home_season,
    min(coalesce(h.home_boat, n.home_boat, e.boat, g.boat)) AS home_boat
FROM entry e JOIN log g USING (log_id) LEFT JOIN of_row r USING (log_id, sheet, "row")
LEFT JOIN home_trip_id h ON h.trip_id = r.trip_id LEFT JOIN of_name n ON n.trip = e.trip
GROUP BY ALL;
-- A track: the year (UTC) of its first fix, and the boat of its log or the only boat
-- there is; its fixes and pieces by their own year.
CREATE OR REPLACE TEMP VIEW home_track AS
SELECT k.log_id, k.track_no, strftime(make_timestamp(k.first_ms * 1000), '%Y') AS home_season,
    coalesce(l.boat, (SELECT min(boat) FROM main.trip HAVING count(DISTINCT boat) = 1)) AS home_boat
FROM track k JOIN log l USING (log_id);
CREATE OR REPLACE TEMP VIEW home_fix AS
SELECT DISTINCT f.log_id, f.track_no, f.at_ms, strftime(make_timestamp(f.at_ms * 1000), '%Y') AS home_season,
    h.home_boat
FROM fix f JOIN home_track h USING (log_id, track_no);
CREATE OR REPLACE TEMP VIEW home_track_piece AS
SELECT DISTINCT p.log_id, p.track_no, p.at_utc, strftime(p.at_utc, '%Y') AS home_season,
    coalesce(p.boat, h.home_boat) AS home_boat
FROM main.track_piece p JOIN home_track h USING (log_id, track_no)
