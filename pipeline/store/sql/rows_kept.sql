-- How many rows of logs and pieces of tracks the season has.
SELECT (SELECT count(*) FROM entry_kept), (SELECT count(*) FROM fix) ORDER BY 1
