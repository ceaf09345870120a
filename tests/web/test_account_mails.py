"""Every message the sign-in library can send goes out in our words."""

from pathlib import Path

import allauth
import pytest
from django.conf import settings
from django.template.loader import render_to_string

THEIRS = Path(allauth.__file__).parent / "templates"
OURS = Path(settings.BASE_DIR) / "trimops/web/templates"
MAILS = sorted(
    path.relative_to(THEIRS).as_posix()
    for folder in ("account/email", "mfa/email")
    for path in THEIRS.glob(f"{folder}/*.txt")
)
FACTS = {
    "current_site": {"name": "hooves.example", "domain": "hooves.example"},
    "password_reset_url": "https://hooves.example/r?a=1&b=2",
    "activate_url": "https://hooves.example/c?a=1&b=2",
    "email": "nell@example.com",
    "code": "483 112",
    "timestamp": "2 March 2027",
    "ip": "192.0.2.7",
    "user_agent": "A browser",
}


@pytest.mark.parametrize("name", MAILS)
def test_we_have_our_own_words_for_it(name):
    assert (OURS / name).is_file()


@pytest.mark.parametrize("name", [name for name in MAILS if name.endswith("_subject.txt")])
def test_a_subject_is_one_line_that_says_what_it_is_about(name):
    subject = render_to_string(name, FACTS).strip()
    assert 10 <= len(subject) <= 60
    assert "\n" not in subject


@pytest.mark.parametrize(
    "name", [name for name in MAILS if name.endswith("_message.txt") and "base" not in name]
)
def test_a_message_says_what_to_do_when_it_was_not_asked_for(name):
    message = render_to_string(name, FACTS)
    assert message.startswith("Good day,\n\n")
    assert "&amp;" not in message
    assert any(words in message for words in ("nothing to do", "leave it"))


@pytest.mark.parametrize("name", ["password_changed", "email_changed", "password_set"])
def test_a_message_about_a_change_says_when_and_from_where(name):
    message = render_to_string(f"account/email/{name}_message.txt", FACTS)
    assert "2 March 2027" in message
    assert "192.0.2.7" in message


def test_the_link_for_a_new_password_is_written_out_whole():
    message = render_to_string("account/email/password_reset_key_message.txt", FACTS)
    assert "\nhttps://hooves.example/r?a=1&b=2\n" in message
