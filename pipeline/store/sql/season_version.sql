-- The schema of a season file whose table of settings was found to be one.
SELECT value FROM season.main.setting WHERE name = 'schema' ORDER BY value
