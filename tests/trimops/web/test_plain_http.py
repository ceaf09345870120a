"""Without HTTPS programs are refused and people are led on (ASVS 4.1.2)."""

import pytest
from django.test import Client

from trimops.kernel.secret_link import new_secret

pytestmark = pytest.mark.django_db


@pytest.fixture
def _behind_https(settings):
    settings.IS_HTTPS = settings.SECURE_SSL_REDIRECT = True


@pytest.mark.usefixtures("_behind_https")
@pytest.mark.parametrize(
    "path",
    ["/api/v1/farms/", "/api/v1/nowhere/", f"/feeds/{new_secret()}.ics"],
    ids=["farms", "nowhere", "feed"],
)
def test_a_program_is_refused_rather_than_led_on(path):
    answer = Client().get(path)
    assert answer.status_code == 403
    assert answer.json()["code"] == "https_only"
    assert answer["Content-Type"] == "application/problem+json"
    assert Client().get(path, secure=True).status_code in (401, 404)


@pytest.mark.usefixtures("_behind_https")
def test_a_person_is_led_on():
    answer = Client().get("/account/login/")
    assert (answer.status_code, answer["Location"]) == (301, "https://testserver/account/login/")


def test_where_the_site_has_no_https_nobody_is_refused_for_it():
    assert Client().get("/api/v1/farms/").status_code == 401
