-- Fish with their strike's place and instant in place of ids.
SELECT t.boat, (SELECT min(o.start_at) FROM leg o WHERE o.trip_id = f.trip_id) AS first_start,
    l.start_at AS leg_start, n.line, s.strike_at, f.* EXCLUDE (fish_id, strike_id, trip_id, log_id, file, sheet, "row")
FROM fish f JOIN strike s USING (strike_id) LEFT JOIN trip t ON t.trip_id = f.trip_id
LEFT JOIN leg l ON l.leg_id = s.leg_id LEFT JOIN line n ON n.line_id = s.line_id
ORDER BY f.fish_id
