-- The heaviest fish by any method, kg; 0 where none has a weight.
SELECT coalesce(max(weight_kg), 0) AS heaviest_kg FROM estimate WHERE rank = 1 ORDER BY 1
