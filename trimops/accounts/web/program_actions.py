"""What programs can do at all: what the addresses of the API do."""

from collections.abc import Iterator
from functools import lru_cache

from django.urls import URLPattern, URLResolver, get_resolver

from trimops.accounts.actions import Action


@lru_cache(maxsize=1)
def program_actions() -> frozenset[Action]:
    """Each action that an address under /api/ does, by what its view says of itself; others no token is given."""
    return frozenset(action for entry in _views(get_resolver(), "") for action in _actions(entry))


def _views(resolver: URLResolver, before: str) -> Iterator[object]:
    for entry in resolver.url_patterns:
        address = before + str(entry.pattern)
        if isinstance(entry, URLResolver):
            yield from _views(entry, address)
        elif isinstance(entry, URLPattern) and address.startswith("api/"):
            yield getattr(entry.callback, "cls", None)


def _actions(view: object) -> Iterator[Action]:
    yield from (op.action for op in getattr(view, "ops", {}).values())
    does = getattr(view, "does", None)
    if isinstance(does, Action):
        yield does
    elif isinstance(does, dict):
        yield from does.values()
