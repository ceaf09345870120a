"""What `manage.py check` says of how people come in."""

import pytest
from django.core.checks import Tags, run_checks


def said():
    return [each.id for each in run_checks(tags=[Tags.security]) if str(each.id).startswith("accounts.")]


@pytest.fixture(autouse=True)
def _on_this_machine(settings):
    settings.ALLOWED_HOSTS = ["localhost", "127.0.0.1", "[::1]"]


def test_nothing_where_all_is_well(settings, tmp_path):
    assert said() == []
    settings.STOLEN_PASSWORDS = str(tmp_path / "list.txt")
    (tmp_path / "list.txt").write_text("")
    assert said() == []


def test_a_list_of_stolen_passwords_that_cannot_be_read_is_told_before_anybody_sets_one(settings, tmp_path):
    for named in (tmp_path, tmp_path / "nowhere.txt"):
        settings.STOLEN_PASSWORDS = str(named)
        assert said() == ["accounts.E001"]


@pytest.mark.parametrize(
    ("hosts", "https", "debug", "expected"),
    [
        (["trim.example"], False, False, ["accounts.W001"]),
        (["*"], False, False, ["accounts.W001"]),
        (["trim.example"], True, False, []),
        (["*"], False, True, []),
    ],
)
def test_a_site_that_is_reached_from_elsewhere_without_https_is_warned_of(
    settings, hosts, https, debug, expected
):
    settings.ALLOWED_HOSTS, settings.IS_HTTPS, settings.DEBUG = hosts, https, debug
    assert said() == expected
