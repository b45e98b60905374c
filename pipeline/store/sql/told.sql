-- The rows of log LOG_ID and of those logs that may have rows in common with it: they have
-- rows of its days, or either has rows without a date.
CREATE OR REPLACE TEMP TABLE told AS
SELECT * FROM told_row WHERE log_id = LOG_ID
    OR log_id IN (SELECT log_id FROM main.entry WHERE date IS NULL OR date IN (SELECT date FROM main.entry WHERE log_id = LOG_ID))
    OR EXISTS (SELECT 1 FROM main.entry WHERE log_id = LOG_ID AND date IS NULL)
