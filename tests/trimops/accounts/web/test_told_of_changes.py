"""Whose ways in were changed is told by mail (ASVS 6.3.7), and the log has a line of it without a secret."""

import logging
import re
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
from allauth.usersessions.models import UserSession
from django.core.cache import cache
from django.test import Client
from django.urls import reverse

from tests.factories import PASSWORD, House, make_house, make_user
from trimops.outbox.models import Outgoing
from trimops.portal.services.make_link import LinkKind, make_link

NEW = "a-cow-called-buttercup"
HERE = {"REMOTE_ADDR": "203.0.113.77", "HTTP_USER_AGENT": "A browser of the yard"}


@pytest.fixture
def house(db) -> House:
    cache.clear()
    return make_house()


@pytest.fixture
def told(caplog):
    caplog.set_level(logging.INFO, logger="trimops.security")
    return lambda: [record.told for record in caplog.records if record.name == "trimops.security"]


def by_password(user, password=PASSWORD):
    client = Client(**HERE)
    return client, client.post(reverse("account_login"), {"login": user.email, "password": password})


def proven(user):
    """Signed in, and the password given once more."""
    client, _ = by_password(user)
    client.post(reverse("account_reauthenticate"), {"password": PASSWORD})
    return client


def mails(house):
    return list(Outgoing.objects.within(house.scope).order_by("pk"))


def code_of(secret):
    return format_hotp_value(hotp_value(secret, next(yield_hotp_counters_from_time())))


def test_a_changed_password_is_told_with_when_and_from_where(house, told):
    client, _ = by_password(house.owner)
    client.post(
        reverse("account_change_password"), {"oldpassword": PASSWORD, "password1": NEW, "password2": NEW}
    )
    (mail,) = mails(house)
    assert mail.address == house.owner.email
    assert mail.subject.endswith("Your password was changed")
    for words in ("203.0.113.77", "A browser of the yard", "If it was not", "UTC"):
        assert words in mail.body
    assert [line["event"] for line in told()] == ["sign_in", "way_in_changed"]
    assert told()[-1]["what"] == "password_changed"
    assert NEW not in str(told()) + mail.body


def test_so_is_one_set_by_the_link_in_a_mail(house, mailoutbox):
    client = Client(**HERE)
    client.post(reverse("account_reset_password"), {"email": house.owner.email})
    link = next(word for word in mailoutbox[-1].body.split() if word.startswith("http"))
    form = client.get(urlsplit(link).path, follow=True)
    client.post(form.request["PATH_INFO"], {"password1": NEW, "password2": NEW})
    assert [mail.address for mail in mails(house)] == [house.owner.email]


@pytest.mark.django_db(transaction=True)
def test_the_app_and_the_codes_on_paper_are_told(house, told):
    client = proven(house.owner)
    page = client.get(reverse("mfa_activate_totp"))
    secret = client.session["mfa.totp.secret"]
    assert page.status_code == 200
    client.post(reverse("mfa_activate_totp"), {"code": code_of(secret)})
    client.post(reverse("mfa_generate_recovery_codes"))
    client.post(reverse("mfa_deactivate_totp"))
    told_of = [line["what"] for line in told() if line["event"] == "way_in_changed"]
    assert told_of == ["totp_activated", "recovery_codes_generated", "totp_deactivated"]
    assert len(mails(house)) == 3
    assert secret not in str(told()) + str([mail.body for mail in mails(house)])


def test_a_token_that_is_made_is_told_and_stands_in_no_line(house, told):
    client = proven(house.trimmer)
    words = {"name": "Farm office", "scopes": ["farms:see"], "lasts": "90"}
    shown = client.post(reverse("own_programs"), words)
    (text,) = re.findall(r"trimops_[0-9a-f]{64}", shown.content.decode())
    (mail,) = mails(house)
    assert (mail.address, mail.subject.endswith("A program was given a token")) == (house.trimmer.email, True)
    events = [line["event"] for line in told()]
    assert events == ["sign_in", "proof_given", "token_made", "way_in_changed"]
    assert text not in str(told()) + mail.body


def test_who_is_in_no_business_is_told_all_the_same(db, mailoutbox):
    cache.clear()
    user = make_user()
    client, _ = by_password(user)
    client.post(
        reverse("account_change_password"), {"oldpassword": PASSWORD, "password1": NEW, "password2": NEW}
    )
    assert [mail.to for mail in mailoutbox] == [[user.email]]


def test_each_way_to_come_in_and_each_failure_is_a_line(house, told):
    by_password(house.owner, "wrong")
    by_password(make_user(), "wrong")
    client, _ = by_password(house.owner)
    client.post(reverse("account_logout"))
    Client(**HERE).post(reverse("come_in_by_link", args=[make_link(user=house.client, kind=LinkKind.TOLD)]))
    lines = told()
    assert [line["event"] for line in lines] == [
        "sign_in_failed", "sign_in_failed", "sign_in", "sign_out", "sign_in",
    ]  # fmt: skip
    assert (lines[0]["by"], lines[2]["ways"], lines[4]["ways"]) == (house.owner.pk, ["password"], ["link"])
    assert {line["seen_from"] for line in lines} == {"203.0.113.77"}
    assert house.owner.email not in str(lines)


def test_a_wrong_second_step_is_a_line_and_a_right_one_names_it(house, told):
    secret = generate_totp_secret()
    TOTP.activate(house.owner, secret)
    paper = RecoveryCodes.activate(house.owner).get_unused_codes()[0]
    client, answer = by_password(house.owner)
    client.post(answer["Location"], {"code": "not-one"})
    client.post(answer["Location"], {"code": paper})
    assert [line["event"] for line in told()] == ["second_step_failed", "sign_in"]
    assert told()[0]["by"] == house.owner.pk
    assert told()[1]["ways"] == ["password", "recovery_codes"]
    assert paper not in str(told())


def test_a_passkey_that_is_none_is_a_line(db, told):
    client = Client(**HERE)
    client.post(reverse("mfa_login_webauthn"), {"credential": "nonsense"})
    assert [line["event"] for line in told()] == ["second_step_failed"]
    assert not Authenticator.objects.exists()


def test_too_many_wrong_passwords_are_a_line_of_their_own(house, told):
    for _ in range(11):
        by_password(house.owner, "wrong")
    assert [line["event"] for line in told()][-2:] == ["sign_in_held", "refused"]


def test_whoever_proves_once_more_that_it_is_they_goes_on_under_a_new_key(house, told):
    client, _ = by_password(house.owner)
    before = client.session.session_key
    other = Client(**HERE)
    other.cookies = client.cookies.copy()
    client.post(reverse("account_reauthenticate"), {"password": PASSWORD})
    after = client.session.session_key
    assert after != before
    assert told()[-1] == {"event": "proof_given", "by": house.owner.pk, "seen_from": "203.0.113.77"}
    assert client.get(reverse("usersessions_list")).status_code == 200
    assert [place.session_key for place in UserSession.objects.all()] == [after]


def test_a_wrong_password_leaves_the_key_as_it_was(house):
    client, _ = by_password(house.owner)
    before = client.session.session_key
    client.post(reverse("account_reauthenticate"), {"password": "wrong"})
    assert client.session.session_key == before
