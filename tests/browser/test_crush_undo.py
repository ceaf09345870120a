"""Taking back and choosing between two phones, by the modules alone: what would be written, and what is told."""

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.browser.phone_modules import Module, module_alone

pytestmark = pytest.mark.xdist_group("browser")
SHOWN = "new Map(given.writings.filter((one) => one.uid === given.shows).map((one) => [one.cowKey, one]))"
UNDO = f"""const last = it.lastThing(given.writings, {SHOWN});
return last && [it.undoWords(last, given.writings, "cow 1"), it.undoing(last, given.writings)];"""
TOLD = f"""return it.twoPhones(given.writings, {SHOWN}, given.settled ?? [])
  .map(({{ shown, others }}) => [shown.uid, others.map((one) => one.uid)]);"""
KEEP = "return it.keepingOther({ shown: given[0], other: given[1] });"


@pytest.fixture(scope="module")
def undo(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "undo.js") as module:
        yield module


@pytest.fixture(scope="module")
def phones(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "two_phones.js") as module:
        yield module


def test_a_first_writing_is_taken_back_and_then_put_back(undo: Module) -> None:
    first = put("a", seq=1, note="Quiet")
    gone = put("b", seq=2, after="a", is_gone=True, note="Quiet")

    words, then = undo.run(UNDO, {"writings": [first], "shows": "a"})
    assert (words, then["after"], then["is_gone"]) == ("Take back cow 1", "a", True)

    words, then = undo.run(UNDO, {"writings": [first, gone], "shows": None})
    assert (words, then["after"], then["is_gone"]) == ("Put cow 1 back", "b", False)
    assert then["content"] == first["content"]


def test_a_change_is_undone_to_what_stood_before_it(undo: Module) -> None:
    writings = [put("a", seq=1, note="Quiet"), put("b", seq=2, after="a", note="Kicks")]

    words, then = undo.run(UNDO, {"writings": writings, "shows": "b"})

    assert words == "Take back the change to cow 1"
    assert (then["after"], then["is_gone"]) == ("b", False)
    assert then["content"]["entry"]["note"] == "Quiet"


def test_a_turn_of_the_knives_goes_back_as_a_whole_and_comes_back_as_it_was(undo: Module) -> None:
    """It drags, and then which one next: two versions of one turn."""
    dull = {**put("a", seq=1), "kind": "blade", "content": {"went_dull": [1], "in_hand": []}}
    turned = {**put("b", seq=2, after="a"), "kind": "blade", "content": {"went_dull": [1], "in_hand": [2]}}
    gone = {**turned, "uid": "c", "seq": 3, "after": "b", "is_gone": True}

    _, then = undo.run(UNDO, {"writings": [dull, turned], "shows": "b"})
    assert (then["after"], then["is_gone"], then["content"]) == ("b", True, turned["content"])

    _, then = undo.run(UNDO, {"writings": [dull, turned, gone], "shows": None})
    assert (then["after"], then["is_gone"], then["content"]) == ("c", False, turned["content"])


def test_the_last_tap_counts_and_not_the_phones_clock(undo: Module) -> None:
    late = put("a", seq=1, cow="c1", made_at="2026-11-25T15:00:00Z")
    then_early = put("b", seq=2, cow="c2", made_at="2026-11-25T09:00:00Z")

    _, then = undo.run(UNDO, {"writings": [late, then_early], "shows": "b"})

    assert then["cowKey"] == "c2"


@pytest.mark.parametrize(
    "later",
    [
        {"uid": "b", "seq": 0, "after": "a", "state": "other"},
        {"uid": "b", "seq": 2, "cow": "c2", "state": "refused"},
    ],
)
def test_nothing_older_is_taken_back_in_place_of_the_last_thing(undo: Module, later: dict[str, Any]) -> None:
    given = {"writings": [put("a", seq=1), put(**later)], "shows": "b" if later["state"] == "other" else "a"}

    assert undo.run(UNDO, given) is None


def test_versions_that_know_of_each_other_are_not_told(phones: Module) -> None:
    writings = [put("a", note="Quiet"), put("b", after="a", state="other", note="Kicks")]

    assert phones.run(TOLD, {"writings": writings, "shows": "b"}) == []


def test_the_last_word_of_the_other_side_is_told_until_settled(phones: Module) -> None:
    mine = put("a", note="Quiet")
    theirs = [put("b", state="other", note="Kicks"), put("c", after="b", state="other", note="Kicks hard")]
    given = {"writings": [mine, *theirs], "shows": "a"}

    assert phones.run(TOLD, given) == [["a", ["c"]]]
    assert phones.run(TOLD, {**given, "settled": ["c"]}) == []


def test_two_phones_that_say_the_same_have_nothing_to_choose(phones: Module) -> None:
    theirs = put("b", state="other", note="Quiet", crush_seconds=500)

    assert phones.run(TOLD, {"writings": [put("a", note="Quiet"), theirs], "shows": "a"}) == []


def test_a_cow_that_one_took_back_and_the_other_changed_is_told(phones: Module) -> None:
    first = put("a", note="Quiet")
    changed = put("b", after="a", note="Kicks")
    taken_back = put("c", after="a", state="other", is_gone=True, shows=True)

    told = phones.run(TOLD, {"writings": [first, changed, taken_back], "shows": None})

    assert told == [["c", ["b"]]]
    then = phones.run(KEEP, [taken_back, changed])
    assert (then["after"], then["is_gone"], then["content"]["entry"]["note"]) == ("c", False, "Kicks")


def test_what_the_server_names_beside_is_told_under_another_name_too(phones: Module) -> None:
    """Both phones added the cow: each by a name of its own."""
    writings = [
        put("a", cow="n1", note="Quiet", beside=["b"]),
        put("b", cow="n2", state="other", note="Kicks"),
    ]

    assert phones.run(TOLD, {"writings": writings, "shows": "a"}) == [["a", ["b"]]]


def put(
    uid: str, *, cow: str = "c1", note: str = "", crush_seconds: int = 240, **fields: object
) -> dict[str, Any]:
    """One writing of a cow as it is kept on the phone."""
    content = {
        "cow": {"id": 1},
        "told_vet": "",
        "entry": {"note": note, "crush_seconds": crush_seconds, "feet": []},
    }
    usual = {"seq": 1, "after": None, "is_gone": False, "state": "sent", "made_at": "2026-11-25T10:00:00Z"}
    usual |= {"kind": "cow", "record": "r", "shows": False, "beside": [], "by": "Another", "placed_at": None}
    return {**usual, "uid": uid, "cowKey": cow, "content": content, **fields}
