UPDATE set_aside SET file = l.label FROM log l WHERE l.log_id = set_aside.log_id AND set_aside.file <> l.label;
UPDATE reading_doubt SET file = l.label FROM log l
    WHERE l.log_id = reading_doubt.log_id AND reading_doubt.file <> l.label;
UPDATE question SET file = l.label FROM log l WHERE l.log_id = question.log_id AND question.file <> l.label
