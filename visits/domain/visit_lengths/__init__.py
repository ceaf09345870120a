"""The length of a visit, learned from a business's own finished visits. `learn_lengths.py` states the method."""
