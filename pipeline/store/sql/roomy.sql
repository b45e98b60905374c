-- Past this the database works from files beside the season file.
SET memory_limit = '1GB'
