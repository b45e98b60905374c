SET force_compression = 'uncompressed'
