-- Names of fish that no species stands for, as logged, and how many fish have them.
SELECT file, species_logged AS name, count(*) AS fish FROM fish
WHERE species IS NULL AND species_logged IS NOT NULL
GROUP BY file, species_logged
ORDER BY file, species_logged
