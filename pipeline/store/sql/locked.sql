SET lock_configuration = true
