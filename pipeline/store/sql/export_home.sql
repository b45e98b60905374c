-- Where each row of a trip belongs: the season (the year of the trip's day) and the
-- boat. A row of no trip is in season and boat unknown.
CREATE OR REPLACE TEMP VIEW home_trip_id AS
SELECT t.trip_id, coalesce(strftime(coalesce(t.date, min(l.start_at)::DATE), '%Y'), 'unknown') AS home_season, t.boat AS home_boat
FROM main.trip t LEFT JOIN main.leg l USING (trip_id) GROUP BY t.trip_id, t.date, t.boat;
CREATE OR REPLACE TEMP VIEW home_leg_id AS
SELECT l.leg_id, h.home_season, h.home_boat FROM main.leg l JOIN home_trip_id h USING (trip_id);
CREATE OR REPLACE TEMP VIEW home_strike_id AS
SELECT s.strike_id, h.home_season, h.home_boat FROM main.strike s JOIN home_trip_id h USING (trip_id);
CREATE OR REPLACE TEMP VIEW home_fish_id AS
SELECT f.fish_id, h.home_season, h.home_boat FROM main.fish f JOIN home_trip_id h USING (trip_id)
