SELECT coalesce(max(log_id), 0) + 1 FROM (SELECT log_id FROM log UNION ALL SELECT log_id FROM past_log) ORDER BY 1
