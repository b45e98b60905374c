-- Every strike by how it ended and, of those lost, the cause as logged.
SELECT outcome, coalesce(hooked, false) AS hooked, CASE WHEN outcome = 'lost' THEN loss_cause END AS loss_cause,
    count(*) AS strikes
FROM strike GROUP BY ALL ORDER BY outcome, hooked, loss_cause NULLS LAST
