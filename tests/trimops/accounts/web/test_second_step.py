"""The second step: codes by the standard, each worth something once, and no way round it."""

from base64 import b32encode
from datetime import timedelta
from urllib.parse import urlsplit

import pytest
from allauth.mfa.models import Authenticator
from allauth.mfa.recovery_codes.internal.auth import RecoveryCodes
from allauth.mfa.totp.internal.auth import (
    TOTP,
    format_hotp_value,
    generate_totp_secret,
    hotp_value,
    yield_hotp_counters_from_time,
)
from django.core.cache import cache
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import PASSWORD, House, make_house
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, invitation_token, invite_person
from trimops.accounts.services.make_token import TokenWish, make_token
from trimops.accounts.services.save_business import save_business
from trimops.portal.services.make_link import LinkKind, make_link

# RFC 6238, Appendix B, the lines for SHA-1 (typed from memory; eight figures, the secret is its ASCII).
SECRET = b32encode(b"12345678901234567890").decode()
VECTORS = {
    59: "94287082",
    1111111109: "07081804",
    1111111111: "14050471",
    1234567890: "89005924",
    2000000000: "69279037",
    20000000000: "65353130",
}


@pytest.fixture
def house(db) -> House:
    cache.clear()
    return make_house()


def code_of(secret):
    return format_hotp_value(hotp_value(secret, next(yield_hotp_counters_from_time())))


def with_app(user):
    secret = generate_totp_secret()
    TOTP.activate(user, secret)
    return secret


def by_password(user):
    client = Client()
    answer = client.post(reverse("account_login"), {"login": user.email, "password": PASSWORD})
    assert answer.status_code == 302
    return client, answer["Location"]


def is_in(client):
    return "_auth_user_id" in client.session


@pytest.mark.parametrize(("moment", "code"), VECTORS.items())
def test_codes_are_those_of_the_standard(settings, monkeypatch, moment, code):
    settings.MFA_TOTP_DIGITS = 8
    monkeypatch.setattr("allauth.mfa.totp.internal.auth.time.time", lambda: moment)
    assert code_of(SECRET) == code


def test_the_password_alone_lets_nobody_in_who_has_a_second_step(house):
    secret = with_app(house.owner)
    client, leads_to = by_password(house.owner)
    assert leads_to.startswith(reverse("mfa_authenticate"))
    assert not is_in(client)
    wrong = "000000" if code_of(secret) != "000000" else "111111"
    assert client.post(leads_to, {"code": wrong}).status_code == 200
    assert not is_in(client)
    assert client.post(leads_to, {"code": code_of(secret)}).status_code == 302
    assert is_in(client)


def test_a_code_is_worth_something_once(house, monkeypatch):
    now = timezone.now().timestamp()
    monkeypatch.setattr("allauth.mfa.totp.internal.auth.time.time", lambda: now)
    code = code_of(with_app(house.owner))
    for worth in (True, False):
        client, leads_to = by_password(house.owner)
        client.post(leads_to, {"code": code})
        assert is_in(client) is worth


def test_a_code_of_the_half_minute_before_is_worth_nothing(house, monkeypatch):
    secret = with_app(house.owner)
    code, now = code_of(secret), timezone.now().timestamp()
    monkeypatch.setattr("allauth.mfa.totp.internal.auth.time.time", lambda: now + 31)
    client, leads_to = by_password(house.owner)
    client.post(leads_to, {"code": code})
    assert not is_in(client)


def test_codes_cannot_be_tried_without_end(house):
    secret = with_app(house.owner)
    client, leads_to = by_password(house.owner)
    for number in range(11):
        client.post(leads_to, {"code": f"{number:06}"})
    client.post(leads_to, {"code": code_of(secret)})
    assert not is_in(client)


def test_a_code_on_paper_stands_for_the_app_once(house):
    with_app(house.owner)
    paper = RecoveryCodes.activate(house.owner).get_unused_codes()[0]
    for worth in (True, False):
        client, leads_to = by_password(house.owner)
        client.post(leads_to, {"code": paper})
        assert is_in(client) is worth


def test_what_is_kept_is_sealed(house):
    secret = with_app(house.owner)
    RecoveryCodes.activate(house.owner)
    kept = str([row.data for row in Authenticator.objects.all()])
    assert secret not in kept
    assert kept.count("gAAAA") == 2


def test_a_new_password_by_mail_does_not_pass_the_second_step_by(house, mailoutbox):
    with_app(house.owner)
    client = Client()
    client.post(reverse("account_reset_password"), {"email": house.owner.email})
    link = next(word for word in mailoutbox[-1].body.split() if word.startswith("http"))
    form = client.get(urlsplit(link).path, follow=True)
    new = {"password1": "a-cow-called-buttercup", "password2": "a-cow-called-buttercup"}
    client.post(form.request["PATH_INFO"], new)
    assert not is_in(client)
    house.owner.refresh_from_db()
    assert house.owner.check_password("a-cow-called-buttercup")


def test_neither_do_a_link_by_mail_and_an_invitation(house):
    secret = with_app(house.client)
    client = Client()
    link = reverse("come_in_by_link", args=[make_link(user=house.client, kind=LinkKind.TOLD)])
    answer = client.post(link)
    assert answer["Location"].startswith(reverse("mfa_authenticate"))
    assert not is_in(client)
    client.post(answer["Location"], {"code": code_of(secret)})
    assert is_in(client)

    far, guest = make_house("Fell & Beck"), Guest(house.client.email, "x", Role.OFFICE)
    asked = invite_person(business=far.business, guest=guest, at=timezone.now(), by=far.owner)
    client = Client()
    answer = client.post(reverse("invitation", args=[invitation_token(asked)]), {"password": PASSWORD})
    assert answer["Location"].startswith(reverse("mfa_authenticate"))
    assert not is_in(client)


def test_who_is_asked_for_a_second_step_and_has_none_is_let_in_nowhere_but_to_set_it_up(house):
    wish = TokenWish("Farm office", {Action.SEE_FARMS}, timedelta(days=7))
    _, text = make_token(membership=house.memberships[Role.OFFICE], wish=wish, at=timezone.now())
    bearing = {"Authorization": f"Bearer {text}"}
    assert Client().get("/api/v1/farms/", headers=bearing).status_code == 200
    house.business.needs_second_step = True
    save_business(business=house.business)
    client = Client()
    client.force_login(house.office)
    for name in ("home", "this_week", "invoice_list", "own_programs"):
        assert client.get(reverse(name))["Location"] == reverse("mfa_index")
    assert client.get("/api/v1/farms/").status_code == 403
    assert Client().get("/api/v1/farms/", headers=bearing).status_code == 403
    page = client.get(reverse("mfa_index"))
    assert page.status_code == 200
    assert "asks everybody who works there for a second step" in page.content.decode()
    with_app(house.office)
    assert client.get(reverse("this_week")).status_code == 200


def test_a_farm_client_is_never_asked_for_a_second_step(house):
    house.business.needs_second_step = True
    save_business(business=house.business)
    client = Client()
    client.force_login(house.client)
    assert client.get(reverse("portal_home")).status_code == 200


@pytest.mark.parametrize(
    "name", ["mfa_activate_totp", "mfa_deactivate_totp", "mfa_add_webauthn", "mfa_generate_recovery_codes"]
)
def test_whoever_changes_how_they_get_in_gives_their_password_once_more(house, name):
    with_app(house.owner)
    client = Client()
    client.force_login(house.owner)
    assert client.get(reverse(name))["Location"].startswith(reverse("account_reauthenticate"))
    assert client.post(reverse(name))["Location"].startswith(reverse("account_reauthenticate"))
