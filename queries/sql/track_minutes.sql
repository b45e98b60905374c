-- Each log's tracks by minutes since 1970, with the mean speed.
SELECT log_id, coalesce(boat, '') AS boat, epoch_ms(at_utc) // 60000 AS minute, avg(speed_kn) AS speed_kn
FROM track_piece GROUP BY ALL ORDER BY log_id, minute
