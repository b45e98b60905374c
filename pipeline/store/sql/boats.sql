-- The boats that the logs of the season name, as they are shown.
SELECT DISTINCT boat FROM (
    SELECT coalesce(n.boat, e.boat) AS boat FROM entry e LEFT JOIN boat_name n ON n.logged = e.boat
    UNION ALL SELECT boat FROM log
) WHERE boat IS NOT NULL ORDER BY boat
