SELECT id, about, choice, said, at FROM answer ORDER BY at, id
