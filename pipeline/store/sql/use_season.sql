USE season
