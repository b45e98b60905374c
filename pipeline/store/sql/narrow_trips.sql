INSERT INTO temp.part_trip
SELECT trip_id FROM season.trip
WHERE ($1 = '' OR boat = $1) AND ($2 = '' OR date >= CAST(nullif($2, '') AS DATE))
    AND ($3 = '' OR date <= CAST(nullif($3, '') AS DATE))
