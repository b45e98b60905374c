-- By log, what its rows say but for their day, and how many say so.
SELECT log_id, hash(kind, but_day) AS print, count(*) AS n FROM told_row WHERE log_id IN (LOG_IDS) GROUP BY ALL ORDER BY ALL
