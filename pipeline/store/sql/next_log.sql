SELECT coalesce(max(log_id), 0) + 1 FROM (SELECT log_id FROM main.log UNION ALL SELECT log_id FROM past.log) ORDER BY 1
