"""Answers as an OSRM table gives them, sound until a test spoils them."""

A, B = (54.1, -2.3), (54.2, -2.4)


def table(**other):
    """2 x 2, with `other` parts in place of its own."""
    near = [{"distance": 3.1}, {"distance": 12.0}]
    sound = {"durations": [[0, 600.5], [660, 0]], "distances": [[0, 9000.2], [9500, 0]]}
    return {"code": "Ok", **sound, "sources": near, "destinations": near, **other}
