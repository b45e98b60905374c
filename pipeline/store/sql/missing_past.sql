-- Columns of entry_kept that its past has not yet.
SELECT column_name, data_type FROM duckdb_columns()
WHERE database_name = current_database() AND table_name = 'entry_kept' AND column_name NOT IN (
    SELECT column_name FROM duckdb_columns() WHERE database_name = current_database()
        AND table_name = 'past_entry_kept')
ORDER BY column_name
