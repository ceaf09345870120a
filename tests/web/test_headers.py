"""What every answer says beside its content, and how much is read of what is sent."""

import re
import subprocess
import sys

import pytest
from django.conf import settings
from django.http import HttpResponse
from django.test import Client, RequestFactory

from tests.factories import make_house
from trimops.web.body_limit import MOST_BODY, BodyLimitMiddleware
from trimops.web.headers import HeadersMiddleware

NEEDED = {
    "X-Content-Type-Options": r"nosniff",
    "X-Frame-Options": r"DENY",
    "Referrer-Policy": r"same-origin|no-referrer",
    "Cross-Origin-Opener-Policy": r"same-origin",
    "Cross-Origin-Resource-Policy": r"same-origin",
    "Permissions-Policy": r".*camera=\(\).*geolocation=\(\).*microphone=\(\).*",
    "Content-Security-Policy": r".*frame-ancestors 'none'.*",
    "Cache-Control": r".+",
}


def asked(path, **extra):
    return Client(raise_request_exception=False).get(path, **extra)


@pytest.mark.django_db
@pytest.mark.parametrize(
    "path",
    ["/account/login/", "/nowhere/", "/farms/", "/api/v1/farms/", "/stop/x/"],
)
def test_an_answer_of_any_kind_says_all_of_it(path):
    answer = asked(path)
    for name, value in NEEDED.items():
        assert re.fullmatch(value, answer.headers.get(name, "")), (name, answer.headers.get(name))


@pytest.mark.django_db
def test_a_file_of_ours_is_taken_for_what_it_is_and_by_our_pages_alone():
    answer = asked("/static/trimops/trimops.css")
    assert b"".join(answer.streaming_content)
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert answer["Cross-Origin-Resource-Policy"] == "same-origin"
    assert "Access-Control-Allow-Origin" not in answer.headers
    answer.close()


def test_the_policy_lets_no_inline_script_or_style_in_and_nothing_from_elsewhere():
    directives = settings.CONTENT_SECURITY_POLICY["DIRECTIVES"]
    said = [source for sources in directives.values() for source in sources]
    assert not {"'unsafe-inline'", "'unsafe-eval'", "*", "https:"} & set(said)
    assert (directives["default-src"], directives["object-src"]) == (["'self'"], ["'none'"])
    assert directives["base-uri"] == directives["frame-ancestors"] == ["'none'"]


def test_what_says_nothing_of_caches_is_kept_by_nobody():
    middleware = HeadersMiddleware(lambda request: HttpResponse("x"))
    assert middleware(RequestFactory().get("/"))["Cache-Control"] == "private, no-store"


@pytest.mark.django_db
def test_signing_out_over_https_empties_the_browsers_cache(settings):
    settings.IS_HTTPS = True
    browser = Client()
    browser.force_login(make_house().owner)
    assert "Clear-Site-Data" not in browser.get("/account/login/", secure=True)
    assert browser.post("/account/logout/", secure=True)["Clear-Site-Data"] == '"cache"'


@pytest.mark.parametrize(
    ("said", "is_read"),
    [
        ("0", True),
        (str(MOST_BODY), True),
        (str(MOST_BODY + 1), False),
        ("9" * 5_000, False),
        ("x", False),
        ("-1", False),
    ],
)
def test_a_body_is_refused_by_what_is_said_of_its_size(said, is_read):
    def page(request):
        return HttpResponse("read")

    request = RequestFactory().post("/api/v1/farms/")
    request.META["CONTENT_LENGTH"] = said
    answer = BodyLimitMiddleware(page)(request)
    assert (answer.status_code == 200) is is_read
    assert is_read or answer["Content-Type"] == "application/problem+json"


@pytest.mark.django_db
def test_a_person_is_told_that_it_is_too_large():
    answer = Client().post("/account/login/", b"x" * (MOST_BODY + 1), content_type="text/plain")
    assert answer.status_code == 413
    assert b"nothing was changed" in answer.content
    assert "Content-Security-Policy" in answer.headers


@pytest.mark.django_db
@pytest.mark.parametrize(
    "host", ["evil.example", "trimops.example.evil.example", "trimops.example:80@evil.example", "a b"]
)
def test_another_name_of_the_host_is_answered_with_nothing(host, settings):
    settings.ALLOWED_HOSTS = ["trimops.example"]
    assert asked("/account/login/", headers={"Host": host}).status_code == 400
    assert asked("/account/login/", headers={"Host": "trimops.example"}).status_code == 200


PLACES_ELSEWHERE = (
    "https://evil.example/", "//evil.example/", "/\\evil.example", "https:evil.example", "\\\\evil.example",
    "javascript:alert(1)", "https://trimops.example@evil.example/", "///evil.example", "/%09/evil.example", "http://testserver.evil.example/",
)  # fmt: skip


@pytest.mark.django_db
@pytest.mark.parametrize("place", PLACES_ELSEWHERE)
def test_signing_in_leads_nowhere_else(place):
    house = make_house()
    browser = Client()
    answer = browser.post(
        "/account/login/?next=" + place,
        {"login": house.owner.email, "password": "a-long-word-for-tests", "next": place},
    )
    assert answer.status_code == 302
    assert answer["Location"] in ("/", "/%09/evil.example", "/%2509/evil.example")


SAID = """
import django, os, json
os.environ["DJANGO_SETTINGS_MODULE"] = "trimops.settings.base"
django.setup()
from django.conf import settings as s
names = ("SESSION_COOKIE_NAME CSRF_COOKIE_NAME SESSION_COOKIE_SECURE CSRF_COOKIE_SECURE SESSION_COOKIE_HTTPONLY "
         "SESSION_COOKIE_SAMESITE SECURE_HSTS_SECONDS SECURE_HSTS_PRELOAD SECURE_SSL_REDIRECT SESSION_COOKIE_DOMAIN "
         "SESSION_COOKIE_PATH").split()
print(json.dumps({name: getattr(s, name) for name in names}))
"""


def test_over_https_cookies_are_bound_to_this_very_host(tmp_path):
    env = {
        "TRIMOPS_HTTPS": "1",
        "TRIMOPS_DATA_DIR": str(tmp_path),
        "PATH": "",
        "TRIMOPS_SECRET_KEY": "x" * 50,
    }
    told = subprocess.run(
        [sys.executable, "-c", SAID],
        env=env,
        cwd=settings.BASE_DIR,
        capture_output=True,
        text=True,
        check=True,
    ).stdout
    assert '"SESSION_COOKIE_NAME": "__Host-sessionid", "CSRF_COOKIE_NAME": "__Host-csrftoken"' in told
    assert (
        '"SESSION_COOKIE_SECURE": true, "CSRF_COOKIE_SECURE": true, "SESSION_COOKIE_HTTPONLY": true' in told
    )
    assert (
        '"SECURE_HSTS_SECONDS": 31536000, "SECURE_HSTS_PRELOAD": false, "SECURE_SSL_REDIRECT": true' in told
    )
    assert '"SESSION_COOKIE_DOMAIN": null, "SESSION_COOKIE_PATH": "/"' in told
