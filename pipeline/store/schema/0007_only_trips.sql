-- Days of trips alone tell no season where no other log has hours or bites.
CREATE OR REPLACE VIEW open_question AS
SELECT * FROM question q WHERE NOT CASE kind
    WHEN 'no strikes' THEN EXISTS (SELECT 1 FROM strike s JOIN leg l USING (leg_id) WHERE l.log_id = q.log_id)
    WHEN 'no effort' THEN EXISTS (SELECT 1 FROM strike s JOIN leg l USING (leg_id) WHERE s.log_id = q.log_id)
    WHEN 'no lines' THEN EXISTS (SELECT 1 FROM leg WHERE log_id = q.log_id)
        AND NOT EXISTS (SELECT 1 FROM leg WHERE log_id = q.log_id AND lines_out IS NULL)
    WHEN 'few lines' THEN EXISTS (SELECT 1 FROM leg WHERE log_id = q.log_id)
        AND NOT EXISTS (SELECT 1 FROM leg WHERE log_id = q.log_id AND lines_out IS NULL)
    WHEN 'told' THEN (SELECT count(*) FROM strike WHERE log_id = q.log_id) = about::INTEGER
        OR (SELECT count(*) FROM strike WHERE log_id = q.log_id) < about::INTEGER
            AND EXISTS (SELECT 1 FROM strike WHERE log_id <> q.log_id)
    WHEN 'no days' THEN EXISTS (SELECT 1 FROM strike WHERE log_id = q.log_id AND trip_id IS NOT NULL)
    WHEN 'no leg days' THEN NOT EXISTS (SELECT 1 FROM leg l JOIN trip t USING (trip_id)
        WHERE l.log_id = q.log_id AND t.date IS NULL)
    WHEN 'only trips' THEN EXISTS (SELECT 1 FROM leg) OR EXISTS (SELECT 1 FROM strike)
    ELSE false END;
