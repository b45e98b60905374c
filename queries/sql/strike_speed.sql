-- Every strike on a leg with a track: the speed logged and the speed run.
SELECT t.trip, t.boat, strftime(s.strike_at, '%Y-%m-%d %H:%M') AS at, s.outcome,
    coalesce(s.species, s.species_logged) AS species,
    coalesce(round(s.speed_kn, 1), l.speed_kn) AS logged_kn, k.speed_kn AS ran_kn,
        round(1.96 * k.err_kn, 2) AS plus_minus_kn, k.turning,
    k.pieces * 10 AS seconds, s.file, s.sheet, s."row"
FROM strike_track k JOIN strike s USING (strike_id) LEFT JOIN leg l ON l.leg_id = s.leg_id LEFT
    JOIN trip t ON t.trip_id = s.trip_id
ORDER BY s.strike_id
