"""The table that decides who may do what, as DEVELOPERS.md shows it and as pages and addresses name it."""

from tests.walls.write_table import PAGE, table, written
from trimops.accounts.actions import MAY, Action

PACKAGES = ("trimops", "farms", "visits", "invoicing")


def test_developers_md_shows_the_table_that_decides():
    assert written(PAGE.read_text()) == table(), "python -m tests.walls.write_table"


def test_every_action_says_who_may_and_what_it_is():
    assert set(MAY) == set(Action)
    assert not [action for action in Action if not MAY[action].says or not MAY[action].roles]


def test_every_action_is_done_somewhere():
    files = (path for package in PACKAGES for path in (PAGE.parent / package).rglob("*.py"))
    text = "".join(path.read_text() for path in files if path.parts[-2:] != ("accounts", "actions.py"))
    assert not [action.name for action in Action if f"Action.{action.name}" not in text]
