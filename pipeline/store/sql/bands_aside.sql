-- A table before the season file's of the same name, until bands_back.
CREATE OR REPLACE TEMP TABLE band AS SELECT * FROM main.band ORDER BY ord, factor
