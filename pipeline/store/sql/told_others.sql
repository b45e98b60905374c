SELECT count(*) FROM told WHERE log_id <> $1 ORDER BY 1
