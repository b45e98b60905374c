-- All that a database holds beside rows and macros, each with the statement that makes it.
SELECT 'table' AS kind, schema_name, table_name AS name, coalesce(sql, '') AS made_by FROM duckdb_tables()
    WHERE database_name = $1
UNION ALL SELECT 'view', schema_name, view_name, coalesce(sql, '') FROM duckdb_views()
    WHERE database_name = $1 AND NOT internal
UNION ALL SELECT 'index', schema_name, index_name, '' FROM duckdb_indexes() WHERE database_name = $1
UNION ALL SELECT 'sequence', schema_name, sequence_name, '' FROM duckdb_sequences() WHERE database_name = $1
UNION ALL SELECT 'type', schema_name, type_name, '' FROM duckdb_types() WHERE database_name = $1 AND NOT internal
UNION ALL SELECT 'schema', schema_name, schema_name, '' FROM duckdb_schemas()
    WHERE database_name = $1 AND NOT internal AND schema_name <> 'main'
ORDER BY ALL
