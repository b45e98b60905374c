INSERT INTO question VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9,
    CASE WHEN $10 = '' THEN []::VARCHAR[] ELSE string_split($10, chr(31)) END,
        CASE WHEN $11 = '' THEN []::VARCHAR[] ELSE string_split($11, chr(31)) END)
