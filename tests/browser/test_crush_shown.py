"""Which version of a cow is on the screen."""

import pytest

from tests.browser.conftest import Site
from tests.browser.phone_modules import module_of

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def shown(door: Site):
    module = module_of(door, "shown.js")

    def of(*writings):
        rows = [row(*writing) if isinstance(writing, tuple) else writing for writing in writings]
        return dict(module.run("return [...it.shownOf(given)].map(([key, one]) => [key, one.uid])", rows))

    return of


def row(uid, state, **more):
    """A version of cow 1; uid tells its order on this phone too."""
    plain = {"kind": "cow", "cowKey": "c1", "record": "r1", "after": None, "is_gone": False, "shows": False}
    return {**plain, "seq": int(uid), "placed_at": None, "uid": uid, "state": state, **more}


def test_the_last_one_made_here_that_waits(shown):
    assert shown(("1", "sent"), ("2", "waiting"), ("3", "waiting")) == {"c1": "3"}
    assert shown(row("2", "waiting", seq=5), row("3", "waiting", seq=4)) == {"c1": "2"}


def test_what_waits_goes_before_what_another_phone_wrote_until_the_server_has_placed_it(shown):
    assert shown(("1", "waiting"), row("9", "other", shows=True)) == {"c1": "1"}
    assert shown(("1", "sent"), row("9", "other", shows=True)) == {"c1": "9"}


def test_what_the_server_says_shows_and_without_its_word_the_last_one_placed(shown):
    assert shown(row("1", "sent", shows=True), ("2", "sent")) == {"c1": "1"}
    placed = [row("1", "sent", placed_at="2026-03-02T09:00"), row("2", "other", placed_at="2026-03-02T08:00")]
    assert shown(*placed) == {"c1": "1"}


def test_what_was_taken_back_is_not_there(shown):
    assert shown(("1", "sent"), row("2", "waiting", is_gone=True, after="1")) == {}
    assert shown(row("1", "sent", shows=True, is_gone=True)) == {}


def test_a_refused_one_stays_to_be_mended_until_something_is_written_over_it(shown):
    assert shown(("1", "refused")) == {"c1": "1"}
    assert shown(row("1", "sent", shows=True), row("2", "refused", after="1")) == {"c1": "2"}
    assert shown(row("1", "sent"), row("2", "refused", after="1"), row("3", "other", shows=True)) == {
        "c1": "3"
    }
    assert shown(("1", "refused"), row("2", "waiting", after="1")) == {"c1": "2"}


def test_each_cow_and_each_other_thing_by_its_own_key(shown):
    wash = row("7", "waiting", kind="wash", cowKey=None, record="r7")
    new = row("8", "waiting", cowKey="n8", record="r8")
    assert shown(("1", "waiting"), wash, new) == {"c1": "1", "r7": "7", "n8": "8"}


def test_one_cow_added_on_two_phones_is_one_cow_once_the_server_says_so(shown):
    ours, theirs = row("1", "sent", cowKey="n1"), row("2", "other", cowKey="n2", shows=True)
    assert shown(ours, theirs) == {"n1": "1", "n2": "2"}
    theirs["beside"] = ["1", "unknown"]
    assert shown(ours, theirs) == {"n2": "2"}
    third = row("3", "other", cowKey="c99", shows=True, beside=["2", "1"])
    theirs["shows"] = False
    assert shown(ours, theirs, third) == {"c99": "3"}
    assert shown(ours, theirs, third, row("4", "waiting", cowKey="n1", after="1")) == {"n1": "4"}
