-- By log, the days of its rows, those by their labels among them, the keys of rows that have
-- none, and whether a row looks to other logs of its folder for its day.
SELECT log_id, (day - DATE '1970-01-01')::BIGINT AS day, CASE WHEN day IS NULL THEN key END AS key,
    bool_or(leans) AS leans
FROM told_row WHERE log_id IN (LOG_IDS) GROUP BY ALL ORDER BY ALL
