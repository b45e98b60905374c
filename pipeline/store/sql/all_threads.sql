RESET threads
