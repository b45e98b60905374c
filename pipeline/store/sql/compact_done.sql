DETACH tight; DETACH roomy
