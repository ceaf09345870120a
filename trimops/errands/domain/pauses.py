"""How long an errand that failed waits before it is tried again."""

from datetime import timedelta

FIRST_SECONDS, GROWTH, LONGEST_SECONDS = 2.0, 4.0, 3600.0
MOST_TRIES = 8
"""The eighth comes some hour and three quarters after the first: a server that is away is mostly back by then."""


def pause_after(tries: int, chance: float) -> timedelta | None:
    """The pause after `tries` (1 or more) in vain; None when it is time that somebody looks at it.

    It grows fourfold up to an hour, and is drawn out or shortened by up to a half with `chance` (0 to 1), so that what
    failed together does not come again together.
    """
    if tries < 1:
        raise ValueError("nothing was tried yet")
    if tries >= MOST_TRIES:
        return None
    seconds = min(LONGEST_SECONDS, FIRST_SECONDS * GROWTH ** (tries - 1))
    return timedelta(seconds=seconds * (0.5 + chance))
