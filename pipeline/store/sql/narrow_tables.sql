-- The trips, strikes and fish of the part asked about.
CREATE OR REPLACE TEMP TABLE part_trip (trip_id INTEGER NOT NULL);
CREATE OR REPLACE TEMP TABLE part_strike (strike_id INTEGER NOT NULL);
CREATE OR REPLACE TEMP TABLE part_fish (fish_id INTEGER NOT NULL)
