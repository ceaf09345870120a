"""Safety copies: one file that holds the database and the data folder, proven by restoring it."""
