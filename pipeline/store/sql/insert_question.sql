INSERT INTO question VALUES ($1, $2, $3, $4, $5, $6, $7,
    CASE WHEN $8 = '' THEN []::VARCHAR[] ELSE string_split($8, chr(31)) END, CASE WHEN $9 = '' THEN []::VARCHAR[] ELSE string_split($9, chr(31)) END)
