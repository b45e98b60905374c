-- Fish and the strikes that brought them. First those that name their strike,
-- by its own number or by its place in the trip.
CREATE OR REPLACE TEMP TABLE pair AS
WITH numbered AS (
    SELECT hit_id, trip_key, outcome, coalesce(strike,
        (row_number() OVER (PARTITION BY trip_key, log_id ORDER BY at NULLS LAST, ord))::VARCHAR) AS no
    FROM bite WHERE origin = 'strikes'
), named AS (
    SELECT f.hit_id AS fish_hit, min(n.hit_id) AS strike_hit
    FROM bite f JOIN numbered n ON n.trip_key = f.trip_key AND lower(n.no) = lower(f.strike)
    WHERE f.origin = 'fish' AND n.outcome NOT IN ('missed', 'lost')
    GROUP BY ALL HAVING count(*) = 1
)
SELECT min(fish_hit) AS fish_hit, strike_hit FROM named GROUP BY strike_hit;

-- Then those whose measures a bite of the trip tells too: a weight or a length is the same, none is another, and
-- neither is like a second one.
INSERT INTO pair
WITH alike AS (
    SELECT f.hit_id AS fish_hit, s.hit_id AS strike_hit FROM bite f JOIN bite s USING (trip_key)
    WHERE f.origin = 'fish' AND s.origin <> 'fish' AND s.measured AND f.log_id = s.log_id
      AND f.hit_id NOT IN (SELECT fish_hit FROM pair) AND s.hit_id NOT IN (SELECT strike_hit FROM pair)
      AND s.outcome NOT IN ('missed', 'lost')
      AND coalesce(f.date = s.date, true) AND coalesce(s.kind_of_fish = f.kind_of_fish, true)
      AND coalesce(abs(f.scale_kg - s.scale_kg) < 0.1, true) AND coalesce(abs(f.length_cm - s.length_cm) < 1, true)
      AND coalesce(abs(f.girth_cm - s.girth_cm) < 1, true)
      AND (f.scale_kg IS NOT NULL AND s.scale_kg IS NOT NULL OR f.length_cm IS NOT NULL AND s.length_cm IS NOT NULL)
)
SELECT fish_hit, strike_hit FROM alike
WHERE fish_hit IN (SELECT fish_hit FROM alike GROUP BY ALL HAVING count(*) = 1)
  AND strike_hit IN (SELECT strike_hit FROM alike GROUP BY ALL HAVING count(*) = 1);
