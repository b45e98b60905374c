-- Lines with boat and start in place of their leg's id.
SELECT t.boat, l.start_at, n.* EXCLUDE (line_id, leg_id, log_id, file, sheet, "row")
FROM line n JOIN leg l USING (leg_id) JOIN trip t USING (trip_id) ORDER BY n.line_id
