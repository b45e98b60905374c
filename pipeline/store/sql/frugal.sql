-- While a log streams in, the database's own cache is what grows: keep it small.
SET memory_limit = '160MB'
