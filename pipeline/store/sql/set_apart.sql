INSERT INTO log_apart SELECT $1, $2 WHERE NOT EXISTS (SELECT 1 FROM log_apart WHERE log_id = $1 AND other_id = $2)
