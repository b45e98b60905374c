-- Views before the season file's tables of the same names.
CREATE TEMP VIEW trip AS SELECT * FROM season.trip WHERE trip_id IN (SELECT trip_id FROM temp.part_trip);
CREATE TEMP VIEW leg AS SELECT * FROM season.leg WHERE trip_id IN (SELECT trip_id FROM temp.part_trip);
CREATE TEMP VIEW line AS SELECT * FROM season.line WHERE leg_id IN (SELECT leg_id FROM leg);
CREATE TEMP VIEW effort AS SELECT * FROM season.effort WHERE leg_id IN (SELECT leg_id FROM leg);
CREATE TEMP VIEW leg_piece AS SELECT * FROM season.leg_piece WHERE leg_id IN (SELECT leg_id FROM leg);
CREATE TEMP VIEW strike AS SELECT * FROM season.strike WHERE strike_id IN (SELECT strike_id FROM temp.part_strike);
CREATE TEMP VIEW strike_track AS SELECT * FROM season.strike_track
    WHERE strike_id IN (SELECT strike_id FROM temp.part_strike);
CREATE TEMP VIEW fish AS SELECT * FROM season.fish WHERE fish_id IN (SELECT fish_id FROM temp.part_fish)
