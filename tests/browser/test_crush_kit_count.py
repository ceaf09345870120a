"""Kit on the phone: counted from the cows (as `visits/services/trim_kit.py` books it), put right by hand."""

from collections.abc import Iterator
from decimal import Decimal
from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.browser.crush_bench_day import consumable, cow, did, foot, kit, papers, shown, use
from tests.browser.phone_modules import Module, module_alone
from visits.domain.kit.read_quantity import seen_words
from visits.domain.kit.stock_kinds import Unit

pytestmark = pytest.mark.xdist_group("browser")
BLOCKED = (did("block", "medial", "wood"), did("wrap"))


@pytest.fixture(scope="module")
def count(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "kit_count.js") as module:
        yield module


def used(count: Module, *writings: dict[str, Any], **changes: object) -> dict[str, tuple[Any, ...]]:
    """Name -> counted, by hand, used, left."""
    rows = count.run(
        "return it.kitUsed(new Map(given.shown), given.papers)",
        {"shown": shown(*writings), "papers": papers(**changes)},
    )
    return {row["item"]["name"]: (row["counted"], row["extra"], row["used"], row["left"]) for row in rows}


def test_blocks_glue_and_wraps_count_themselves_over_all_cows(count: Module) -> None:
    two = (cow(1, foot("LH", *BLOCKED)), cow("901", foot("RH", did("block", "lateral", "wood"))))

    assert used(count, *two) == {
        "Wooden block": (2, 0, 2, 1),
        "Glue": (25, 0, 25, 75),
        "Wrap": (1, 0, 1, None),
    }


def test_a_correction_is_added_to_whatever_the_cows_come_to(count: Module) -> None:
    corrections = (kit(1, "1.00"), kit(2, "-5.50", uid="k2"))
    before = used(count, *corrections)
    after = used(count, cow(1, foot("LH", *BLOCKED)), *corrections)

    assert (before["Wooden block"], after["Wooden block"]) == ((0, 1, 1, 2), (1, 1, 2, 1))
    assert after["Glue"] == (12.5, -5.5, 7, 93)


def test_of_two_phones_corrections_the_later_stands(count: Module) -> None:
    early, late = kit(1, "4.00", at="10:59", uid="z"), kit(1, "2.00", at="11:00", uid="a")

    assert used(count, late, early)["Wooden block"][1] == 2


def test_what_a_visit_uses_counts_once_and_is_told_apart(count: Module) -> None:
    gloves = consumable(1, "Gloves", use("visit", 2), use("cow", 0.5), in_van=40)
    two = (cow(1, foot("LH")), cow("901"))
    assert used(count, consumables=[gloves])["Gloves"] == (2, 0, 2, 38)
    assert used(count, *two, kit(1, "1.00"), consumables=[gloves])["Gloves"] == (3, 1, 4, 36)


def test_what_is_mixed_comes_off_the_stock_and_what_is_refused_does_not(count: Module) -> None:
    agent = consumable(1, "Iodophor", kind="disinfectant", unit="ml", in_van=1000)
    mixed = {"consumable": 1, "dilution": "1:100", "litres": "10"}
    wash = {**kit(1, "0.00", uid="w1"), "kind": "wash", "content": mixed}
    other = {**wash, "uid": "w2", "content": {**mixed, "litres": "2.5"}}
    assert used(count, wash, other, consumables=[agent])["Iodophor"] == (125, 0, 125, 875)
    refused = {**other, "state": "refused"}
    assert used(count, wash, refused, consumables=[agent])["Iodophor"][0] == 100
    nothing = {**wash, "content": {**mixed, "consumable": None, "litres": None}}
    assert used(count, nothing, consumables=[agent])["Iodophor"][0] == 0


@pytest.mark.parametrize(
    ("row", "tally", "cows"),
    [
        ((10, 0, 5), (5, 3), 2),  # two a cow, five left: two cows of three
        ((10, 0, 6), (5, 3), None),
        ((10, 5, 5), (5, 3), 1),  # with what was lost, three a cow
        ((10, 0, 0), (5, 3), 0),
        ((10, 0, -1), (5, 3), None),  # said already
        ((10, 0, None), (5, 3), None),
        ((10, 0, 5), (2, 9), None),  # too few cows to tell
        ((10, 0, 5), (5, None), None),
        ((0, 0, 1), (5, 3), None),
        ((0.3, 0, 0.3), (3, 4), 3),
    ],
)
def test_it_says_for_how_many_cows_the_van_still_has_enough(count: Module, row, tally, cows) -> None:
    given = [
        dict(zip(("byCows", "extra", "left"), row, strict=True)),
        dict(zip(("done", "left"), tally, strict=True)),
    ]
    assert count.run("return it.lastsFor(given[0], given[1])", given) == cows


def test_more_used_than_was_there_is_said_not_refused(count: Module) -> None:
    assert used(count, kit(1, "5.00"))["Wooden block"] == (0, 5, 5, -2)


def test_a_van_that_was_never_counted_has_nothing_left_to_say(count: Module) -> None:
    assert used(count, consumables=[consumable(1, "Gloves", in_van=None)])["Gloves"][3] is None


@pytest.mark.parametrize(
    ("typed", "counted", "extra"),
    [(3, 2, "1.00"), (2, 3, "-1.00"), (2, 2, "0.00"), (0.3, 0.1, "0.20"), (12.5, 37.5, "-25.00")],
)
def test_the_correction_is_what_was_typed_less_what_was_counted(count, typed, counted, extra) -> None:
    assert count.run("return it.extraFor(...given)", [typed, counted]) == extra


@pytest.mark.parametrize(
    ("value", "words"), [(0, "0"), (2, "2"), (12.5, "12.5"), (-1, "−1"), (0.1 + 0.2, "0.3")]
)
def test_a_quantity_has_no_needless_noughts(count, value, words) -> None:
    assert count.run("return it.quantity(given)", value) == words


def test_what_is_left_is_told_in_the_words_of_the_offices_pages(count: Module) -> None:
    amounts = [f"{hundredth / 100:.2f}" for hundredth in range(-320, 320, 7)] + ["1200", "2080.4", "1", "0.5"]
    pairs = [[amount, unit.value] for amount in amounts for unit in Unit]
    told = count.run("return given.map(([amount, unit]) => it.seenWords(Number(amount), unit))", pairs)
    assert told == [seen_words(Decimal(amount), Unit(unit)) for amount, unit in pairs]
