"""The cells of the wall: each address and method, for each asker, with rows of theirs, of others, and of nobody."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from itertools import product
from uuid import UUID, uuid4

from django.urls import reverse

from tests.walls.askers import STRANGER, Asker
from tests.walls.furnished import Furnished
from tests.walls.route import Route
from trimops.accounts.actions import MAY
from trimops.accounts.roles import Role

OWN, FOREIGN, NEVER, OTHER_FARM = "own", "another business's", "never was", "another farm's"
ANSWERED = frozenset({200, 302, 400, 409})
OPEN = frozenset({200, 201, 202, 204, 400, 409, 415, 422})
CLOSED = frozenset({403})


@dataclass(frozen=True)
class Place:
    """An address with rows in it, whose those are, and which of them are not own."""

    name: str
    route: Route
    whose: str
    address: str
    which: int = 0


def places(table: dict[str, Route], mine: Furnished, theirs: Furnished, asker: Asker) -> Iterator[Place]:
    """Each address of the table with own rows, and with every mixture in which one is not.

    The business's other farm is outside for farm clients alone.
    """
    is_client = asker.seat is not None and asker.seat.role is Role.FARM
    never = {row: uuid4() if isinstance(key, UUID) else 987_654_321 for row, key in mine.keys.items()}
    for name, route in table.items():
        yield _place(name, route, OWN, mine.keys)
        if not route.rows:
            continue
        for whose, ring in ((FOREIGN, theirs.keys), (OTHER_FARM, mine.other), (NEVER, never)):
            if whose == OTHER_FARM and not (is_client and set(route.rows.values()) <= set(ring)):
                continue
            for which, rings in list(enumerate(product((mine.keys, ring), repeat=len(route.rows))))[1:]:
                yield _place(name, route, whose, *rings, which=which)


def _place(name: str, route: Route, whose: str, *rings: dict[str, object], which: int = 0) -> Place:
    return Place(name, route, whose, reverse(name, kwargs=route.parts(*rings)), which)


def page_says(place: Place, asker: Asker, method: str) -> Collection[int]:
    """What a page must answer, by its row and nothing else."""
    route = place.route
    if asker.name == STRANGER:
        return {302}
    if asker.seat is None or not route.may(asker.seat.role, asker.seat.rights, method):
        return CLOSED
    if method == "OPTIONS":
        return {200}
    if method not in route.methods:
        return {405}
    if place.whose != OWN:
        return {404}
    return ANSWERED if method == "POST" else {route.answer}


def api_says(place: Place, asker: Asker, method: str) -> Collection[int]:
    """What an address of the API must answer, by the actions of its row and the table of them."""
    does = place.route.does
    if asker.name == STRANGER:
        return {401}
    if asker.seat is None:
        return CLOSED
    action = does.get("get" if method == "HEAD" else method.lower())
    if action is None:
        return {405} if any(may(asker, each) for each in does.values()) else {403, 405}
    if not may(asker, action):
        return CLOSED
    if place.whose != OWN:
        return {404}
    return {place.route.answer} if method in ("GET", "HEAD") else OPEN


def may(asker: Asker, action: str) -> bool:
    """By the table: whether this asker's part, rights and token allow it."""
    seat, allowed = asker.seat, MAY[action]
    if seat is None or seat.role not in allowed.roles:
        return False
    if seat.token_scopes is not None and action not in seat.token_scopes:
        return False
    return seat.role is not Role.FARM or allowed.right is None or allowed.right in seat.rights
