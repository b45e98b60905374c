-- Fish that name no trip, of a day with several: each is one that such a trip's counts boated, and that no other fish
-- of the lists is.
INSERT INTO pair
WITH free AS (
    SELECT * FROM bite WHERE hit_id NOT IN (SELECT fish_hit FROM pair) AND hit_id NOT IN (SELECT strike_hit FROM pair)
), alone AS (
    SELECT hit_id AS fish_hit, boat, date, outcome,
        row_number() OVER (PARTITION BY boat, date, outcome ORDER BY hit_id) AS n
    FROM free WHERE origin = 'fish' AND leg_id IS NULL AND trip_key = 'D|' || boat || '|' || date
        AND trip_key NOT IN (SELECT trip_key FROM leg_trip)
), counted_fish AS (
    SELECT hit_id AS strike_hit, boat, date, outcome,
        row_number() OVER (PARTITION BY boat, date, outcome ORDER BY hit_id) AS n
    FROM free WHERE origin = 'flat' AND NOT measured AND kind_of_fish IS NULL AND time_s IS NULL
        AND outcome IN ('landed', 'released') AND trip_key <> 'D|' || boat || '|' || date
)
SELECT fish_hit, strike_hit FROM alone JOIN counted_fish USING (boat, date, outcome, n);
