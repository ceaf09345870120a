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


@pytest.mark.parametrize(
    "said",
    [
        "Authorization: Bearer {}",
        "Authorization: Basic {}",
        '{{"authorization": "Bearer {}"}}',
        "headers={{'Cookie': 'sessionid={}'}}",
        "Set-Cookie: __Host-sessionid={}; HttpOnly; Path=/",
        "csrftoken={}; other=1",
        "POST /account/login/ login=a&password={}",
        "{{'password1': '{}', 'password2': '{}'}}",
        'line {{\\"secret\\": \\"{}\\"}}',
        "TRIMOPS_SECRET_KEY={}",
        "TRIMOPS_BACKUP_KEY={}",
        "TRIMOPS_METRICS_TOKEN={}",
        "could not connect to postgres://trimops:{}@localhost:5432/trimops",
        "redis://:{}@localhost:6379/0",
        "refused trimops_{} at once",
    ],
)
def test_what_is_named_a_secret_is_hidden_wherever_a_library_writes_it(said):
    secret = "0123456789abcdef" * 3
    assert secret not in written("%s", said.format(secret, secret))
    assert written("%s", said.format(secret, secret)) != "..."


@pytest.mark.parametrize(
    "said",
    [
        "Not Found: /farms/12/",
        '{"message": "GET /farms/", "route": "farms/<int:pk>/", "status": 200, "ms": 12}',
        "form refused at /account/login/: CSRF token missing.",
        "KeyError: 'cow'",
        'duplicate key value violates unique constraint "one_farm"',
        "https://trimops.example:8000/farms/",
        "job trimops.clean_up done, keyed by day",
    ],
)
def test_plain_words_stay_as_they_are(said):
    assert written("%s", said) == said
