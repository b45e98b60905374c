SET threads = 1
