-- The days on which a leg of boat $1 began, any boat's where that is ''.
SELECT DISTINCT date_diff('day', DATE '1970-01-01', coalesce(l.start_at::DATE, t.date)) AS day FROM leg l
    JOIN trip t USING (trip_id)
WHERE ($1 = '' OR t.boat = $1) AND coalesce(l.start_at::DATE, t.date) IS NOT NULL ORDER BY day
