"""When can you come: where one more job fits into a week that stands, exactly, and what would have to move."""
