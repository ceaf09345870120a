"""Passwords known to be stolen, looked up in a list on this machine."""

import hashlib
from random import Random

import pytest
from django.core.exceptions import ValidationError
from django.test import Client
from django.urls import reverse

from tests.factories import PASSWORD, make_user
from trimops.accounts import stolen_passwords
from trimops.accounts.stolen_passwords import StolenPasswordsValidator, is_listed
from trimops.settings.signing_in import PASSWORD_RULES, password_rules


def sha1(word):
    return hashlib.sha1(word.encode()).hexdigest().upper()


def listed(tmp_path, words, end="\r\n"):
    chance = Random(7)
    file = tmp_path / "stolen.txt"
    lines = [f"{sha1(word)}:{10 ** chance.randint(0, 8)}" for word in words]
    file.write_text(end.join(sorted(lines)), newline="")
    return file


@pytest.mark.parametrize("step", [64, 200, 4096])
@pytest.mark.parametrize("count", [0, 1, 2, 3, 50, 400])
def test_every_word_of_the_list_is_found_and_no_other(tmp_path, monkeypatch, count, step):
    monkeypatch.setattr(stolen_passwords, "STEP", step)
    words = [f"word-{number}" for number in range(count)]
    file = listed(tmp_path, words)
    assert [word for word in words if not is_listed(file, word)] == []
    assert [word for word in (f"other-{number}" for number in range(200)) if is_listed(file, word)] == []


def test_hashes_alone_in_small_letters_are_read_too(tmp_path):
    file = tmp_path / "stolen.txt"
    file.write_text("".join(f"{sha1(word).lower()}\n" for word in sorted("abcdef", key=sha1)))
    assert is_listed(file, "c")
    assert not is_listed(file, "g")


def test_a_list_of_many_is_asked_by_few_reads(tmp_path):
    file = tmp_path / "stolen.txt"
    with file.open("w") as out:
        out.writelines(f"{number:040X}:1\n" for number in range(0, 2**160, 2**160 // 200_000))
    seen = []

    class Counting:
        def __init__(self, path):
            self.path = path

        def open(self, mode):
            return Lines(self.path, mode, seen)

    assert not is_listed(Counting(file), "a-cow-called-buttercup")
    assert 5 < len(seen) < 40


class Lines:
    """An open file that notes each leap."""

    def __init__(self, path, mode, seen):
        self.file, self.seen = path.open(mode), seen

    def __enter__(self):
        return self

    def __exit__(self, *fault):
        self.file.close()

    def __getattr__(self, name):
        if name == "seek":
            self.seen.append(name)
        return getattr(self.file, name)


@pytest.mark.django_db
def test_a_password_of_the_list_is_not_taken(tmp_path, settings):
    stolen = "a-cow-called-buttercup"
    settings.AUTH_PASSWORD_VALIDATORS = password_rules(str(listed(tmp_path, [stolen, "x"])))
    client = Client()
    client.force_login(make_user())
    for word, status in ((stolen, 200), ("another-cow-altogether", 302)):
        words = {"oldpassword": PASSWORD, "password1": word, "password2": word}
        answer = client.post(reverse("account_change_password"), words)
        assert answer.status_code == status
        assert ("was stolen somewhere" in answer.content.decode()) is (status == 200)


def test_where_no_list_is_named_nothing_is_said_of_it(tmp_path):
    assert password_rules("") == PASSWORD_RULES
    assert "stolen" not in str(PASSWORD_RULES)
    file = listed(tmp_path, ["123456"])
    rule = StolenPasswordsValidator(file=str(file))
    with pytest.raises(ValidationError, match="stolen"):
        rule.validate("123456")
    rule.validate("1234567")
    assert rule.get_help_text()
