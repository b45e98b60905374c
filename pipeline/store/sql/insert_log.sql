INSERT INTO log (log_id, name, folder, label, boat_given, boat, sha256, zone, settings, headings, rows_kept,
    loaded_at, changed_at)
VALUES ($1, $2, $3, $2, $4, coalesce((SELECT boat FROM boat_name WHERE logged = $4), $4), $5, $6, $7, $8, $9, $10, $11)
