"""What the coming work will use up of one consumable. `learn_use.py` states the method."""
