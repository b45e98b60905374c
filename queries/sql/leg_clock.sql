-- The legs' minutes since 1970, by UTC where the zone is known, else by the
-- boat's clock.
SELECT t.boat, epoch_ms(coalesce(l.start_utc, l.start_at)) // 60000 AS from_minute,
    epoch_ms(coalesce(l.end_utc, l.end_at)) // 60000 AS to_minute,
    l.speed_kn, l.start_utc IS NOT NULL AS zoned
FROM leg l JOIN trip t USING (trip_id) WHERE l.start_at IS NOT NULL ORDER BY l.leg_id
