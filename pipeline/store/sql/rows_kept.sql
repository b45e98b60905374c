-- How many rows of logs the season has.
SELECT count(*) FROM entry_kept ORDER BY 1
