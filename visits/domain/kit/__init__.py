"""Kit: what is used up, what is sharp, what is washed."""
