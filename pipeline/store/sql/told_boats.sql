-- The boats that each log is of: those that its rows name, else the one named for it.
WITH named AS (
    SELECT DISTINCT e.log_id, coalesce(n.boat, e.boat) AS boat FROM main.entry e LEFT JOIN main.boat_name n ON n.logged = e.boat WHERE e.boat IS NOT NULL
)
SELECT log_id, boat FROM named
UNION ALL SELECT log_id, boat FROM main.log WHERE boat IS NOT NULL AND log_id NOT IN (SELECT log_id FROM named)
ORDER BY log_id, boat
