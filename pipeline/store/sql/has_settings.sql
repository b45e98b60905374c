SELECT count(*) FROM information_schema.tables WHERE table_name = 'setting' ORDER BY 1
