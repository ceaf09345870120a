"""Two furnished businesses behind a running server, and everybody who may ask it."""

import logging
import random

import pytest

from tests.standards.api.asked_all import Asking, running
from tests.standards.api.hand import Hand
from tests.walls.askers import by_token, let_in
from tests.walls.conftest import mine  # noqa: F401
from tests.walls.routes import API
from trimops.accounts.roles import Role


@pytest.fixture(scope="module")
def asking(mine):  # noqa: F811
    for name in ("django.request", "trimops.security"):
        logging.getLogger(name).setLevel(logging.CRITICAL)
    let = let_in(mine)
    askers = [by_token(let[role.value]) for role in Role] + [let[Role.OWNER.value]]
    hand = Hand([mine.keys, mine.other], API, random.Random(9))
    with running() as at:
        yield Asking(at, askers, hand)
    for name in ("django.request", "trimops.security"):
        logging.getLogger(name).setLevel(logging.NOTSET)
