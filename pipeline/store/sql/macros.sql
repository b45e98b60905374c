-- The macros that a database holds. To list them takes as long as all else that is asked
-- of a season file: the database has thousands of functions of its own.
SELECT 'macro' AS kind, schema_name, function_name AS name, '' AS made_by FROM duckdb_functions()
WHERE database_name = $1 AND NOT internal
ORDER BY ALL
