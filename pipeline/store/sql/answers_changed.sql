-- Whether a log would be read otherwise now: an answer that it was read with is another one
-- or taken back, or there is one to a question that it left open.
SELECT exists(SELECT 1 FROM log_answer u LEFT JOIN answer a USING (id) WHERE u.log_id = $1 AND a.choice IS DISTINCT
    FROM u.choice)
    OR exists(SELECT 1 FROM question q JOIN answer a USING (id) WHERE q.log_id = $1)
ORDER BY 1
