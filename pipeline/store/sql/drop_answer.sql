DELETE FROM answer WHERE id = ?
