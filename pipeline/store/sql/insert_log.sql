INSERT INTO log (log_id, name, boat, sha256, zone, rows_kept, loaded_at) VALUES (?, ?, ?, ?, ?, ?, ?)
