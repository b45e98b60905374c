SELECT logged, boat FROM boat_name ORDER BY logged
