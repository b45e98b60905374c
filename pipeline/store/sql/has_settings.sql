SELECT count(*) FROM duckdb_tables() WHERE database_name = current_database() AND table_name = 'setting' ORDER BY 1
