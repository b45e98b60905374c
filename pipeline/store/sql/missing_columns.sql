-- Columns that entry may have and that no log so far has used, with their types.
SELECT column_name, data_type FROM duckdb_columns()
WHERE database_name = current_database() AND table_name = 'entry_shape' AND column_name NOT IN (
    SELECT column_name FROM duckdb_columns() WHERE database_name = current_database() AND table_name = 'entry_kept')
ORDER BY column_name
