DELETE FROM boat_name WHERE logged = $1
