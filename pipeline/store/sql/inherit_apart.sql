-- What was settled of log $2 holds for log $1, which takes its place.
INSERT INTO log_apart SELECT DISTINCT $1, other FROM (
    SELECT other_id AS other FROM log_apart WHERE log_id = $2 UNION SELECT log_id FROM log_apart WHERE other_id = $2)
        WHERE other <> $1
