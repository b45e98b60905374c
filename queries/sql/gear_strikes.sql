-- Every hook-up with what it was fished on and how it ended.
SELECT s.outcome, s.loss_cause, n.drag_kg, n.line_class_kg, n.leader, n.hooks
FROM strike s LEFT JOIN line n ON n.line_id = s.line_id
WHERE s.hooked
ORDER BY s.strike_id
