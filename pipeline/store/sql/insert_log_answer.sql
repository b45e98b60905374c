INSERT INTO log_answer VALUES (?, ?, ?)
