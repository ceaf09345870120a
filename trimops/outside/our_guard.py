"""The guard of this site."""

from django.conf import settings

from trimops.outside.guard import Guard


def our_guard() -> Guard:
    """With the places inside of `TRIMOPS_INNER_ADDRESSES` and the machines outside of `TRIMOPS_OUTSIDE_NAMES`."""
    return Guard(inner=frozenset(settings.INNER_ADDRESSES), names=frozenset(settings.OUTSIDE_NAMES))
