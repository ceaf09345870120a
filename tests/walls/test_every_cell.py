"""The whole wall: every address and method, for everybody, with rows of their own, of others, and that never were.

What must come is reckoned from the rows of tests/walls and the table of actions, not from what answers.
"""

import logging
from collections import Counter, defaultdict
from dataclasses import replace
from html import unescape
from zlib import crc32

import pytest
from django.db import connection
from django.urls import reverse

from tests.random_examples import HAS_TIME
from tests.walls.askers import BY_TOKEN, NAMES, STRANGER, by_token, let_in
from tests.walls.asking import METHODS, Asking, blank_pages, taken_back
from tests.walls.cells import CLOSED, OTHER_FARM, OWN, api_says, page_says, places
from tests.walls.routes import API, PAGES
from trimops.accounts.actions import MAY
from trimops.accounts.roles import Role

pytestmark = pytest.mark.both
tried = Counter()
PART_OF_REST = 6


@pytest.fixture(autouse=True)
def _quiet(caplog):
    """Refusals are expected here by the thousand; only what breaks is to be read."""
    caplog.set_level(logging.CRITICAL, logger="django.request")


@pytest.fixture(scope="module")
def askers(mine, theirs):
    yield let_in(mine)
    print(f"\ncells of the wall tried: {tried.total()} ({', '.join(f'{n} {c}' for n, c in tried.items())})")


@pytest.fixture(scope="module")
def asking():
    return Asking()


def body_of(method):
    return None if method in ("GET", "HEAD", "OPTIONS") else b"{}"


def cells(table, mine, theirs, asker):
    return [(place, method) for place in places(table, mine, theirs, asker) for method in METHODS]


def in_turn(cell):
    """`make test` tries what is one's own by the methods that an address has, but for HEAD, and a part of the rest; on
    servers a part of all, which is another one. `make bench` tries everything on both.
    """
    place, method = cell
    is_shown = place.whose == OWN and method in place.route.methods and method != "HEAD"
    if HAS_TIME or (is_shown and connection.vendor == "sqlite"):
        return True
    return crc32(f"{place.name} {method} {connection.vendor}".encode()) % PART_OF_REST == 0


def walk(found, says, asker, ask, kind, body=lambda method: None):
    """What came of each cell that should not have; and that rows of others are told of in the words of none."""
    faults, words = [], defaultdict(set)
    for place, method in filter(in_turn, found):
        wanted = says(place, asker, method)
        told = ask(asker, method, place.address, body(method))
        tried[kind] += 1
        if told.status not in wanted:
            faults.append((place.name, method, place.whose, told.status, sorted(wanted), told.words[:200]))
        if (
            told.status == 302
            and asker.name == STRANGER
            and not told.location.startswith(reverse("account_login"))
        ):
            faults.append((place.name, method, place.whose, told.location))
        if place.whose not in (OWN, OTHER_FARM):
            words[place.name, method, place.which].add(told.words)
    return faults + [(where, "not the same words", said) for where, said in words.items() if len(said) > 1]


def walk_both(found, says, asker, asking, kind, body=lambda method: None):
    """Looking at what is one's own, and pressing it, through all of the program; all else straight."""
    whole, rest = [], []
    for place, method in found:
        is_shown = _is_shown(place, method, says(place, asker, method))
        (whole if is_shown else rest).append((place, method))
    faults = walk(whole, says, asker, asking.whole, kind, body)
    with blank_pages():
        return faults + walk(rest, says, asker, asking.straight, kind, body)


def tell(faults):
    """A line each; none is nothing to tell."""
    return "\n".join(map(str, faults))


def _is_shown(place, method, wanted):
    return place.whose == OWN and (method == "GET" or (method == "POST" and not wanted <= {403, 405}))


@pytest.mark.parametrize("name", NAMES)
def test_every_page(name, mine, theirs, askers, asking, db):
    found = cells(PAGES, mine, theirs, askers[name])
    assert not tell(walk_both(found, page_says, askers[name], asking, "pages"))


@pytest.mark.parametrize("name", NAMES)
def test_every_address_of_the_api_by_session(name, mine, theirs, askers, asking, db):
    found = cells(API, mine, theirs, askers[name])
    assert not tell(walk_both(found, api_says, askers[name], asking, "API by session", body_of))


@pytest.mark.parametrize("name", BY_TOKEN)
def test_every_address_of_the_api_by_token(name, mine, theirs, askers, asking, db):
    asker = by_token(askers[name])
    found = [
        (place, method) for place, method in cells(API, mine, theirs, asker) if method in place.route.methods
    ]
    assert not tell(walk_both(found, api_says, asker, asking, "API by token", body_of))


@pytest.mark.parametrize("role", Role)
def test_a_token_that_lacks_the_action_of_an_operation_does_not_do_it(role, mine, theirs, askers, asking, db):
    """With a token for all else that the part allows."""
    own = [place for place in places(API, mine, theirs, askers[role.value]) if place.whose == OWN]
    for action in sorted({each for place in own for each in place.route.does.values()}):
        if role not in MAY[action].roles:
            continue
        with taken_back():
            asker = by_token(askers[role.value], lacking=action)
            found = [(p, m.upper()) for p in own for m, does in p.route.does.items() if does is action]
            assert not tell(walk(found, api_says, asker, asking.whole, "API by token without it", body_of))
            assert all(api_says(place, asker, method) == CLOSED for place, method in found)


def test_a_farm_client_needs_the_very_right_that_the_row_names(mine, theirs, askers, asking, db):
    """With all rights but that one the page is closed, and its name stands there."""
    client = askers[Role.FARM.value]
    for place in places(PAGES, mine, theirs, client):
        for method in place.route.methods:
            right = place.route.right_to_post if method == "POST" else None
            right = right or place.route.right
            if place.whose != OWN or right is None or Role.FARM not in place.route.roles:
                continue
            lacking = replace(client, seat=replace(client.seat, rights=client.seat.rights - {right}))
            told = asking.straight(lacking, method, place.address)
            tried["pages without the right"] += 1
            assert told.status == 403, (place.name, method)
            assert right.label in unescape(told.words.decode()), (place.name, method)
