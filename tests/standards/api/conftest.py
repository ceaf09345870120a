"""A furnished business inside the whole program, and everybody who may ask it."""

import logging
import random

import pytest
from django.core.handlers.wsgi import WSGIHandler

from tests.standards.api.asked_all import Asking
from tests.standards.api.hand import Hand
from tests.walls.askers import by_token, let_in
from tests.walls.conftest import mine  # noqa: F401
from tests.walls.example_rows import example_bodies
from tests.walls.routes import API
from trimops.accounts.roles import Role

# because: the cookies of a session go to this name alone (schemathesis)
AT = "http://localhost"
PROGRAM = WSGIHandler()
QUIET = ("django.request", "trimops.security")


@pytest.fixture(scope="module")
def asking(mine):  # noqa: F811
    for name in QUIET:
        logging.getLogger(name).setLevel(logging.CRITICAL)
    let = let_in(mine)
    askers = [by_token(let[role.value]) for role in Role] + [let[Role.OWNER.value]]
    yield Asking(
        AT, askers, Hand([mine.keys, mine.other], example_bodies(mine), API, random.Random(9)), PROGRAM
    )
    for name in QUIET:
        logging.getLogger(name).setLevel(logging.NOTSET)
