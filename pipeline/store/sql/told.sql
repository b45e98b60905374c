-- The rows of the logs that are compared.
CREATE OR REPLACE TEMP TABLE told AS SELECT * FROM told_row WHERE log_id IN (LOG_IDS)
