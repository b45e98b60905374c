-- Rows logged under a name that is shown as $1 are shown as $2 from now on. What the club
-- knows goes with the boat; of two summaries the later holds, whose text begins with its day.
UPDATE boat_name SET boat = $2 WHERE boat = $1;
INSERT INTO boat_name SELECT $1, $2 WHERE NOT EXISTS (SELECT 1 FROM boat_name WHERE logged = $1)
    AND EXISTS (SELECT 1 FROM entry WHERE boat = $1 UNION ALL SELECT 1
        FROM (SELECT boat FROM entry_shape UNION ALL BY NAME SELECT * FROM past_entry_kept) WHERE boat = $1
        UNION ALL SELECT 1 FROM log WHERE boat_given = $1 UNION ALL SELECT 1 FROM past_log WHERE boat_given = $1);
DELETE FROM boat_name WHERE logged = boat;
INSERT INTO setting SELECT 'club id of ' || $2, value FROM setting
WHERE name = 'club id of ' || $1 AND NOT EXISTS (SELECT 1 FROM setting WHERE name = 'club id of ' || $2);
DELETE FROM setting WHERE name = 'club summary of ' || $2
    AND value < (SELECT value FROM setting WHERE name = 'club summary of ' || $1);
INSERT INTO setting SELECT 'club summary of ' || $2, value FROM setting
WHERE name = 'club summary of ' || $1 AND NOT EXISTS (SELECT 1 FROM setting WHERE name = 'club summary of ' || $2)
