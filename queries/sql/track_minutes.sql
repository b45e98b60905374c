-- Each track by minutes since 1970, on the clock that it is put on, with its mean speed by its positions, whether
-- or not another track tells of the same times; taken counts its pieces that the
-- season is made of.
WITH taken AS (
    SELECT log_id, track_no, count(*) AS taken FROM track_piece GROUP BY ALL
)
SELECT f.log_id, f.track_no, (f.at_ms + coalesce(s.by_ms, 0)) // 60000 AS minute, avg(f.run_kn) AS speed_kn,
    coalesce(any_value(t.taken), 0) AS taken,
    any_value(l.boat IS NOT NULL) AS boat_given
FROM fix f JOIN log l USING (log_id) LEFT JOIN taken t USING (log_id, track_no)
LEFT JOIN track_shift s USING (log_id, track_no) GROUP BY ALL ORDER BY f.log_id, f.track_no, minute
