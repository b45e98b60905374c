ATTACH %s AS tight
