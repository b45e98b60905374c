DELETE FROM setting WHERE name = ?
