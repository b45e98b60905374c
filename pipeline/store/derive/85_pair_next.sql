-- Then, again and again, those that are each other's best match in a trip: no
-- contradiction of species, line, leg or clock, and the nearest in time.
INSERT INTO pair
WITH free AS (
    SELECT * FROM bite WHERE trip_key IS NOT NULL
      AND hit_id NOT IN (SELECT fish_hit FROM pair) AND hit_id NOT IN (SELECT strike_hit FROM pair)
), long_trip AS (
    SELECT trip_key FROM trip_span GROUP BY trip_key HAVING min(first_day) < max(last_day)
), scored AS (
    SELECT f.hit_id AS fish_hit, s.hit_id AS strike_hit,
        -- a row's own fish before all
        CASE WHEN s.ord // 128 = f.ord // 128 THEN -10000 ELSE 0 END
        + coalesce(abs(date_diff('second', s.at, f.at)) / 60.0, 500)
        + CASE WHEN s.kind_of_fish = f.kind_of_fish THEN 0 ELSE 60 END
        + CASE WHEN lower(s.line) = lower(f.line) THEN 0 ELSE 30 END
        + CASE WHEN s.leg_id = f.leg_id THEN 0 ELSE 30 END
        + CASE s.outcome WHEN f.outcome THEN 0 WHEN 'landed' THEN 5 WHEN 'released' THEN 5 ELSE 300 END AS score
    FROM free f JOIN free s USING (trip_key)
    WHERE f.origin = 'fish' AND s.origin <> 'fish'
      -- a measured bite is a fish itself: that of the row's own list, where this names one of its kind without measures
      AND (NOT s.measured OR s.ord // 128 = f.ord // 128 AND NOT f.measured AND s.origin = 'strikes'
          AND s.kind_of_fish = f.kind_of_fish)
      AND (s.outcome NOT IN ('missed', 'lost') OR s.outcome = 'lost' AND f.outcome = 'lost')
      AND (f.outcome <> 'lost' OR s.outcome NOT IN ('landed', 'released'))
      AND (s.kind_of_fish = f.kind_of_fish OR s.kind_of_fish IS NULL OR f.kind_of_fish IS NULL)
      -- a row's list of what was kept does not tell of a fish that the row let go
      AND NOT (s.ord // 128 = f.ord // 128 AND coalesce(f.kept, false) AND s.outcome = 'released')
      AND (lower(s.line) = lower(f.line) OR s.line IS NULL OR f.line IS NULL)
      -- of which day of a long trip a fish was that names none, its clock alone does not tell
      AND (s.leg_id = f.leg_id OR s.leg_id IS NULL OR f.leg_id IS NULL OR f.date IS NULL AND f.leg IS NULL
          AND trip_key IN (FROM long_trip))
      AND (s.at IS NULL OR f.at IS NULL OR date_diff('second', s.at, f.at) BETWEEN -900 AND 18000)
), ranked AS (
    SELECT *, row_number() OVER (PARTITION BY fish_hit ORDER BY score, strike_hit) AS of_fish,
        row_number() OVER (PARTITION BY strike_hit ORDER BY score, fish_hit) AS of_strike
    FROM scored
)
SELECT fish_hit, strike_hit FROM ranked WHERE of_fish = 1 AND of_strike = 1;
