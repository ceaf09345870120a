"""A furnished business inside the whole program, and everybody who may ask it."""

import logging
import random

import pytest
from django.core.handlers.wsgi import WSGIHandler

from tests.standards.api.asked_all import everybody_asks
from tests.walls.conftest import mine  # noqa: F401

# because: the cookies of a session go to this name alone (schemathesis)
AT = "http://localhost"
PROGRAM = WSGIHandler()
QUIET = ("django.request", "trimops.security")


@pytest.fixture(scope="module")
def asking(mine):  # noqa: F811
    for name in QUIET:
        logging.getLogger(name).setLevel(logging.CRITICAL)
    yield everybody_asks(AT, mine, random.Random(9), PROGRAM)
    for name in QUIET:
        logging.getLogger(name).setLevel(logging.NOTSET)
