"""The guard of this site."""

from django.conf import settings

from trimops.outside.guard import Guard


def our_guard() -> Guard:
    """With the places inside that `TRIMOPS_INNER_ADDRESSES` names."""
    return Guard(inner=frozenset(settings.INNER_ADDRESSES))
