"""A sign-in goes on under another key."""

from allauth.usersessions.models import UserSession
from django.contrib.sessions.models import Session
from django.test import Client
from django.urls import reverse

from tests.factories import PASSWORD
from trimops.accounts.services.renew_session import renew_session


def test_the_old_key_is_worth_nothing_and_the_list_follows(owner):
    client = Client()
    client.post(reverse("account_login"), {"login": owner.user.email, "password": PASSWORD})
    session = client.session
    before, place = session.session_key, UserSession.objects.get()
    after = renew_session(session=session)
    assert after not in ("", before)
    assert session["_auth_user_id"] == str(owner.user.pk)
    assert [each.session_key for each in Session.objects.all()] == [after]
    place.refresh_from_db()
    assert place.session_key == after
