-- No file but the season file is read or written from here on.
SET enable_external_access = false
