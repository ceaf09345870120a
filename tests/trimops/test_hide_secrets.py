import logging

import pytest
from django.test import Client

from trimops.kernel.secret_link import new_secret
from trimops.settings.hide_secrets import HideSecrets


def written(message, *args):
    record = logging.LogRecord("django.request", logging.WARNING, __file__, 1, message, args, None)
    assert HideSecrets().filter(record)
    return record.getMessage()


def test_a_token_is_hidden_wherever_it_stands_in_the_address():
    for secret in (new_secret() for _ in range(50)):
        for address in (f"/bill/{secret}/", f"/bill/{secret}", f"/for-the-vet/{secret}/cows/5/?q=1"):
            assert secret not in written("Not Found: %s", address)
            assert "Not Found: /" in written("Not Found: %s", address)


@pytest.mark.parametrize(
    "address",
    [
        "/farms/12/",
        "/static/trimops/fonts/atkinson-regular.woff2",
        "/visits/week/2026-03-02/changed/",
        "/50%",
    ],
)
def test_plain_addresses_stay_as_they_are(address):
    assert written("Method Not Allowed (%s): %s", "GET", address) == f"Method Not Allowed (GET): {address}"


@pytest.mark.django_db
def test_what_django_says_of_a_refused_request_holds_no_token(caplog):
    secret = new_secret()
    Client().get(f"/nothing-here/{secret}/")
    assert "Not Found: /nothing-here/.../" in caplog.text
    assert secret not in caplog.text


@pytest.mark.parametrize(
    "address",
    ["/visits/feeds/{}.ics", "/bill/{}/invoice.pdf", "/account/login/?next=%2Fbill%2F{}%2F", "/bill/{}\\n"],
)
def test_a_token_before_an_ending_or_inside_another_address_is_hidden(address):
    secret = new_secret()
    assert secret not in written("at %s", address.format(secret))
