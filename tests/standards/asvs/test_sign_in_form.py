"""Small requirements of ASVS 5.0 about passwords and session keys, tried on the pages themselves."""

import math
import re

import pytest
from django.conf import global_settings
from django.contrib.auth.hashers import PBKDF2PasswordHasher
from django.contrib.sessions.backends.base import VALID_KEY_CHARS
from django.contrib.sessions.backends.db import SessionStore
from django.test import Client

from tests.factories import make_user
from trimops.settings import base

FIELD = re.compile(r"<input[^>]*name=\"(?:old)?password\d?\"[^>]*>")


@pytest.mark.django_db
@pytest.mark.parametrize("path", ["/account/login/", "/account/password/change/"])
def test_passwords_are_masked_and_may_be_pasted_and_filled_in(path):
    """6.2.6, 6.2.7: type=password, nothing that forbids a password manager, and the hint that it needs."""
    client = Client()
    if "change" in path:
        client.force_login(make_user())
    fields = FIELD.findall(client.get(path).content.decode())
    assert fields
    for field in fields:
        assert 'type="password"' in field
        assert re.search(r'autocomplete="(current|new)-password"', field)
        assert "onpaste" not in field
        assert "readonly" not in field


@pytest.mark.django_db
def test_a_session_key_has_more_than_128_bits():
    """7.2.3: 32 signs of 36, drawn by Django's safe generator."""
    session = SessionStore()
    session.create()
    key = session.session_key or ""
    assert len(key) == 32
    assert len(key) * math.log2(len(VALID_KEY_CHARS)) > 128


def test_passwords_are_hashed_slowly():
    """11.4.1: the site's own hasher, not that of the tests."""
    assert not hasattr(base, "PASSWORD_HASHERS")
    assert global_settings.PASSWORD_HASHERS[0].endswith("PBKDF2PasswordHasher")
    assert PBKDF2PasswordHasher.iterations >= 600_000
