INSERT INTO setting (name, value) VALUES (?, ?)
