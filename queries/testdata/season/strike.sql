-- Strikes with boat, first start, leg's start and line's name in place of ids.
SELECT t.boat, (SELECT min(o.start_at) FROM leg o WHERE o.trip_id = s.trip_id) AS first_start,
    l.start_at AS leg_start, n.line,
    s.* EXCLUDE (strike_id, trip_id, leg_id, line_id, origin, log_id, file, sheet, "row")
FROM strike s LEFT JOIN trip t USING (trip_id) LEFT JOIN leg l ON l.leg_id = s.leg_id
LEFT JOIN line n ON n.line_id = s.line_id
ORDER BY s.strike_id
