-- The columns of an entry that hold what its row says, the day left out.
SELECT column_name FROM duckdb_columns()
WHERE database_name = current_database() AND table_name = 'entry_shape'
    AND column_name NOT IN ('sheet_id', 'row', 'part', 'date')
ORDER BY column_index
