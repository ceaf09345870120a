"""What would make room for a visit that is left out, each way found and proven by exact timing."""
