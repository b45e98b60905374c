DELETE FROM temp.band WHERE factor = $1
