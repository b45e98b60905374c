-- The trips, strikes and fish of the part asked about.
CREATE OR REPLACE TEMP TABLE part_trip (trip_id INTEGER NOT NULL);
CREATE OR REPLACE TEMP TABLE part_strike (strike_id INTEGER NOT NULL);
CREATE OR REPLACE TEMP TABLE part_fish (fish_id INTEGER NOT NULL);
-- Strikes that came to nothing in a row of counts of which a fish came to the boat.
CREATE OR REPLACE TEMP TABLE part_vague AS
WITH boated AS (
    SELECT DISTINCT log_id, sheet, "row" FROM season.strike WHERE origin = 'flat' AND outcome IN ('landed', 'released')
)
SELECT s.strike_id FROM season.strike s JOIN boated USING (log_id, sheet, "row")
    WHERE s.origin = 'flat' AND s.outcome NOT IN ('landed', 'released')
