"""The day summed up for the sign-off, worked by hand for a day of three cows."""

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser

from tests.browser.crush_bench_day import cow, did, foot, papers, shown
from tests.browser.phone_modules import Module, module_alone
from visits.domain.cautions import FOR_THE_FARM

pytestmark = pytest.mark.xdist_group("browser")
ULCER = {"lesion": "SU", "claw": "lateral", "zone": 4, "zone_map": "ILC", "severity": 3, "dd_stage": ""}
BLOCKED = foot("LH", did("relief", "lateral"), did("block", "medial", "wood"), did("wrap"), findings=[ULCER])
BLOODY = foot("RH", did("length", "lateral"), drew_blood=True, for_vet="hot above the band")
BLOOD = "blood drawn or sensitive tissue open: work on this foot stopped"


@pytest.fixture(scope="module")
def day(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "day_sum.js") as module:
        yield module


@pytest.fixture(scope="module")
def words(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "sign_off_words.js") as module:
        yield module


def sum_of(day: Module, *writings: dict[str, Any]) -> Any:
    given = {"shown": shown(*writings), "papers": papers()}
    return day.run("return it.sumOfDay(new Map(given.shown), given.papers)", given)


def three_cows() -> tuple[dict[str, Any], ...]:
    return (
        cow(1, BLOCKED),
        cow(3, BLOODY, told_vet="The herd manager"),
        cow("901", foot("LF", did("no_cut"))),
    )


def test_cows_are_counted_by_what_was_done(day: Module) -> None:
    said = sum_of(day, *three_cows())

    assert (said["cows"], said["blocksOn"], said["wraps"]) == (3, 1, 1)
    assert said["kinds"] == {"functional": 1, "corrective": 1, "check": 1}


def test_what_is_the_vets_is_said_once_with_the_foot_and_whom_was_told(day: Module) -> None:
    lines = [
        (line["number"], line["foot"], line["reason"], line["told"])
        for line in sum_of(day, *three_cows())["vet"]
    ]

    assert lines == [
        ("318", "RH", BLOOD, "The herd manager"),
        ("318", "RH", "hot above the band", "The herd manager"),
    ]


def test_blocks_still_on_from_before_stand_with_those_of_today_first_to_come_off_first(day: Module) -> None:
    lines = [
        (line["number"], line["foot"], line["claw"], line["off_by"])
        for line in sum_of(day, *three_cows())["blocks"]
    ]

    assert lines == [("96", "RH", "medial", "2026-11-17"), ("412", "LH", "medial", "2026-12-23")]


@pytest.mark.parametrize(
    "change", [did("block_off", "medial"), did("block_off"), did("block", "medial", "wood")]
)
def test_a_block_that_was_taken_off_or_replaced_is_not_on_any_more(day: Module, change) -> None:
    off = [block["off_by"] for block in sum_of(day, cow(2, foot("RH", change)))["blocks"]]

    assert off == (["2026-12-23"] if change["kind"] == "block" else [])


def test_another_claws_block_stays_on(day: Module) -> None:
    assert len(sum_of(day, cow(2, foot("RH", did("block_off", "lateral"))))["blocks"]) == 1


def test_each_foot_to_be_looked_at_again_has_its_days(day: Module) -> None:
    lines = [
        (due["number"], due["foot"], due["due_from"], due["due_until"])
        for due in sum_of(day, cow(1, BLOCKED))["rechecks"]
    ]

    assert lines == [("412", "LH", "2026-12-16", "2026-12-23")]


def test_cows_on_the_list_that_were_not_put_down_are_named(day: Module) -> None:
    assert [one["number"] for one in sum_of(day, *three_cows())["notSeen"]] == ["96"]


def test_the_account_says_what_was_done_in_figures(day: Module, words: Module) -> None:
    def done(*writings: dict[str, Any]) -> str:
        return words.run("return it.doneWords(given)", sum_of(day, *writings))

    assert done() == "No cow was noted."
    assert done(cow(4, foot("LF", did("length", "lateral")))) == "1 cow: 1 functional trim."
    assert done(*three_cows()) == (
        "3 cows: 1 functional trim, 1 corrective trim, 1 looked at.\n1 block on, 1 foot wrapped."
    )


def test_what_the_farm_must_do_begins_with_the_vet_and_ends_with_the_usual_cautions(
    day: Module, words: Module
) -> None:
    given = {"sum": sum_of(day, *three_cows()), "papers": papers()}
    lines = words.run("return it.toDoWords(given.sum, given.papers)", given).split("\n")

    assert lines == [
        "Ring the vet today: cow 318 (right hind).",
        "Blocks overdue since Tue 17 Nov: cow 96 (right hind).",
        "Blocks off by Wed 23 Dec: cow 412 (left hind).",
        "Show again between Wed 16 Dec and Wed 23 Dec: cow 412 (left hind).",
        *FOR_THE_FARM,
    ]
