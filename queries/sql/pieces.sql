-- How many pieces of effort there are.
SELECT count(*) AS pieces FROM effort
