-- By log, what its rows say but for their day, and how many say so.
SELECT log_id, print, count(*) AS n FROM print_of_row WHERE log_id IN (LOG_IDS) GROUP BY ALL ORDER BY ALL
