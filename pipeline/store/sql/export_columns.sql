-- The columns of all tables of the season file, and of the entries, which are a view.
SELECT table_name, column_name, data_type FROM duckdb_columns()
WHERE database_name = current_database() AND schema_name = 'main' AND NOT internal
    AND (table_oid IN (SELECT table_oid FROM duckdb_tables() WHERE NOT temporary AND NOT internal)
        OR table_name = 'entry')
ORDER BY table_name, column_index
