-- levels: yes
-- What became of the strikes by level of the factor $1.
SELECT level, count(*) AS strikes, count(*) FILTER (WHERE hooked) AS hookups,
    count(*) FILTER (WHERE outcome IN ('landed', 'released')) AS boated,
    count(*) FILTER (WHERE outcome = 'not logged') AS outcome_not_logged,
    count(*) FILTER (WHERE hooked IS NULL) AS hooking_not_logged
FROM strike_at_level GROUP BY level, ord
ORDER BY level = 'not logged', ord, level
