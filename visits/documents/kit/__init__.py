"""Papers and drawings of the kit."""
