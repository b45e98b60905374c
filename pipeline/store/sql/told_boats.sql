-- The boats that each log is of: those that its rows name, else the one named for it.
SELECT DISTINCT log_id, boat FROM (
    SELECT log_id, boat FROM told_row
    UNION ALL SELECT log_id, boat FROM main.log WHERE log_id IN (SELECT log_id FROM main.track)
) WHERE boat IS NOT NULL ORDER BY log_id, boat
