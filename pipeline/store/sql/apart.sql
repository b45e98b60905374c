SELECT log_id, other_id FROM log_apart UNION SELECT other_id, log_id FROM log_apart ORDER BY 1, 2
