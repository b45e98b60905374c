SELECT value FROM setting WHERE name = ? ORDER BY value
