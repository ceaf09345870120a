"""How long what a road map said is believed."""

from datetime import datetime, timedelta

ROAD_DAYS = 90
NO_ROAD_DAYS = 7
"""A farm off the map may only have its point mended, or a new map may know its road."""

KEPT_DAYS = 180
"""An old answer is better than an estimate while the road map cannot be asked; after this it goes."""

QUIET_MINUTES = 10
"""A road map that failed is left alone this long."""


def wants_asking_again(asked_at: datetime, *, has_road: bool, at: datetime) -> bool:
    """True once an answer is so old that the map is asked anew."""
    return at - asked_at > timedelta(days=ROAD_DAYS if has_road else NO_ROAD_DAYS)


def is_left_alone(failed_at: datetime, at: datetime) -> bool:
    """True while a map that failed is not asked again. A failure said to be long after `at` is a clock put right."""
    return abs(at - failed_at) < timedelta(minutes=QUIET_MINUTES)
