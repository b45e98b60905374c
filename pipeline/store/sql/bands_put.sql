INSERT INTO temp.band VALUES ($1, $2, $3, $4, $5)
