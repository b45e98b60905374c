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
