-- The names of the boat $1 and of those aboard it.
SELECT DISTINCT role, name FROM (
    SELECT 1 AS ord, 'boat' AS role, boat AS name FROM trip WHERE boat = $1
    UNION ALL SELECT 2, 'captain', captain FROM trip WHERE boat = $1
    UNION ALL SELECT 3, 'crew', anglers FROM trip WHERE boat = $1
    UNION ALL SELECT 3, 'crew', s.angler FROM strike s JOIN trip t USING (trip_id) WHERE t.boat = $1
    UNION ALL SELECT 3, 'crew', f.angler FROM fish f JOIN trip t ON t.trip_id = f.trip_id WHERE t.boat = $1
) WHERE name IS NOT NULL AND name <> ''
ORDER BY role, name
