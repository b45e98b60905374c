-- The log of this name and boat, and what it was read from.
SELECT log_id, sha256, rows_kept FROM log WHERE name = ? AND boat IS NOT DISTINCT FROM ? ORDER BY log_id
