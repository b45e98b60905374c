-- The pieces of all boats' tracks, in order of time.
SELECT epoch_ms(at_utc), seconds, speed_kn FROM track_piece ORDER BY boat, at_utc
