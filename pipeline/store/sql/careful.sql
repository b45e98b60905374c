-- A season file may have been sent by somebody: nothing is fetched and nothing is loaded
-- that this program does not hold.
SET autoinstall_known_extensions = false;
SET autoload_known_extensions = false;
SET allow_community_extensions = false
