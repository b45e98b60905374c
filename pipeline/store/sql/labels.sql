-- A log's label is its name; where several have that, its folder and name; where several
-- have both, these with a number.
UPDATE log SET label = n.label FROM (
    SELECT log_id, CASE WHEN alike = 1 THEN name
        WHEN same = 1 AND folder <> '' THEN folder || '/' || name
        ELSE CASE WHEN folder <> '' THEN folder || '/' ELSE '' END || name || ' (' || nth || ')' END AS label
    FROM (SELECT log_id, name, folder, count(*) OVER (PARTITION BY lower(name)) AS alike,
        count(*) OVER (PARTITION BY lower(name), folder) AS same,
        row_number() OVER (PARTITION BY lower(name), folder ORDER BY sha256, log_id) AS nth FROM log)
) n WHERE n.log_id = log.log_id AND n.label IS DISTINCT FROM log.label
