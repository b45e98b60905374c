-- The boat that was named for a log, as it is shown.
UPDATE log SET boat = coalesce((SELECT n.boat FROM boat_name n WHERE n.logged = boat_given), boat_given);
UPDATE past_log SET boat = coalesce((SELECT n.boat FROM boat_name n WHERE n.logged = boat_given), boat_given)
