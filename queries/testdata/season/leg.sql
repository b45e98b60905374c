-- Legs with boat and first start in place of their trip's id.
SELECT t.boat, min(l.start_at) OVER (PARTITION BY l.trip_id) AS first_start,
    l.* EXCLUDE (leg_id, trip_id, log_id, file, sheet, "row")
FROM leg l JOIN trip t USING (trip_id) ORDER BY l.leg_id
