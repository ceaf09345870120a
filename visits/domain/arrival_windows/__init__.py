"""When a van comes to each farm of a day, as spans that are kept. `walk_day.py` states the method."""
