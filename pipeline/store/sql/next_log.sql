SELECT coalesce(max(log_id), 0) + 1 FROM log ORDER BY 1
