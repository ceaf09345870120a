"""The kit."""
