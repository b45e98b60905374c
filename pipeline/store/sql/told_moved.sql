-- By log of the season file, rows that log $1 has too but for their day.
WITH mine AS (
    SELECT print, count(*) AS n FROM print_of_row WHERE log_id = $1 GROUP BY ALL
), theirs AS (
    SELECT log_id, print, count(*) AS n FROM print_of_row WHERE log_id IN (LOG_IDS) AND log_id <> $1 GROUP BY ALL
)
SELECT t.log_id, sum(least(t.n, m.n))::BIGINT AS moved FROM theirs t JOIN mine m USING (print) GROUP BY t.log_id
    ORDER BY 1
