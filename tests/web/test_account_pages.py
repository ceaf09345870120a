"""The pages around sign-in, each through the real addresses, in our look and in our words."""

import re

import pytest
from django.core import mail
from django.urls import reverse

from trimops.accounts.models import User

pytestmark = pytest.mark.django_db
PASSWORD = "wet-gloves-and-a-rasp"


@pytest.fixture
def nell():
    return User.objects.create_user("nell@example.com", "Nell Harrow", PASSWORD)


def text_of(answer):
    return answer.content.decode()


def test_sign_in_names_what_to_mend_and_then_lets_in(client, nell):
    wrong = client.post(reverse("account_login"), {"login": nell.email, "password": "no"})
    assert "one thing to mend" in text_of(wrong)
    right = client.post(reverse("account_login"), {"login": nell.email, "password": PASSWORD})
    assert right.status_code == 302


@pytest.mark.parametrize("name", ["login", "reset_password", "reset_password_done", "inactive", "signup"])
def test_pages_for_strangers_wear_our_look(client, name):
    page = text_of(client.get(reverse(f"account_{name}")))
    assert '<main id="main"' in page
    assert page.count("<h1>") == 1


@pytest.mark.parametrize("name", ["logout", "change_password", "email", "reauthenticate"])
def test_pages_for_people_signed_in_wear_our_look(client, nell, name):
    client.force_login(nell)
    page = text_of(client.get(reverse(f"account_{name}")))
    assert '<main id="main"' in page
    assert page.count("<h1>") == 1
    assert "Sign out" in page


def test_a_forgotten_password_is_set_anew_by_the_link_in_the_mail_and_the_link_works_once(client, nell):
    client.post(reverse("account_reset_password"), {"email": nell.email})
    link = re.search(r"https?://testserver(/\S+)", mail.outbox[0].body).group(1)
    page = client.get(link, follow=True)
    assert "<h1>Set your new password</h1>" in text_of(page)
    new = "a-new-one-for-nell-9"
    done = client.post(page.request["PATH_INFO"], {"password1": new, "password2": new}, follow=True)
    assert "Your new password is set" in text_of(done)
    nell.refresh_from_db()
    assert nell.check_password(new)
    client.logout()
    assert "<h1>This link no longer works</h1>" in text_of(client.get(link, follow=True))
