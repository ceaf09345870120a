"""The form of a wash-down by tables worked by hand; days and hours in words by Python's own calendar."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from playwright.sync_api import Browser

from tests.browser.phone_modules import Module, module_alone

pytestmark = pytest.mark.xdist_group("browser")
GOOD = {
    "on": None,
    "substance": "Iodophor",
    "dilution": "1:100",
    "contact_minutes": "5",
    "at": "",
    "litres": "10",
    "consumable": None,
}
AGENT = {
    "id": 4,
    "name": "Iodophor 5 l",
    "kind": "disinfectant",
    "active_substance": "Iodophor",
    "dilution": "1:50",
    "contact_minutes": "10",
}
NOW = "2026-11-25T14:00:00Z"
LONDON = "Europe/London"


@pytest.fixture(scope="module")
def form(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "wash_form.js") as module:
        yield module


@pytest.fixture(scope="module")
def when(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "when.js") as module:
        yield module


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"substance": "  "}, "substance"),
        ({"dilution": ""}, "dilution"),
        ({"contact_minutes": ""}, "contact_minutes"),
        ({"contact_minutes": "0"}, "contact_minutes"),
        ({"contact_minutes": "0.04"}, "contact_minutes"),
        ({"contact_minutes": "-5"}, "contact_minutes"),
        ({"contact_minutes": "1441"}, "contact_minutes"),
        ({"contact_minutes": "five"}, "contact_minutes"),
        ({"at": "2026-11-25T14:06Z"}, "at"),
        ({"at": "yesterday"}, "at"),
        ({"consumable": 4, "litres": ""}, "litres"),
        ({"consumable": 4, "litres": "0.04"}, "litres"),
        ({"consumable": 4, "litres": "10000"}, "litres"),
    ],
)
def test_what_is_to_be_mended_is_named(form: Module, changes, field) -> None:
    faults = form.run(
        "return it.faultsOf(given.form, new Date(given.now))", {"form": GOOD | changes, "now": NOW}
    )

    assert list(faults) == [field]


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"litres": ""},
        {"contact_minutes": "0,3"},
        {"at": "2026-11-25T14:04Z"},
        {"at": "2026-11-24T18:00Z"},
    ],
)
def test_what_is_in_order_has_no_fault(form: Module, changes) -> None:
    assert (
        form.run("return it.faultsOf(given.form, new Date(given.now))", {"form": GOOD | changes, "now": NOW})
        == {}
    )


@pytest.mark.parametrize(
    ("changes", "content"),
    [
        ({}, ("5", "2026-11-25T14:00:00.000Z")),
        ({"contact_minutes": "0,34"}, ("0.3", "2026-11-25T14:00:00.000Z")),  # 20 s are 0.33 minutes
        ({"at": "2026-11-24T18:00Z"}, ("5", "2026-11-24T18:00:00.000Z")),
    ],
)
def test_what_is_sent_has_tenths_of_a_minute_and_now_where_no_hour_was_given(form, changes, content) -> None:
    sent = form.run(
        "return it.washContent(given.form, new Date(given.now))", {"form": GOOD | changes, "now": NOW}
    )

    assert (sent["contact_minutes"], sent["washed_at"]) == content
    assert (sent["substance"], sent["dilution"]) == ("Iodophor", "1:100")
    assert (sent["consumable"], sent["litres"]) == (None, None)


def test_a_product_of_the_kit_fills_in_its_label_and_is_sent_with_its_litres(form: Module) -> None:
    ask = "return it.pickProduct(given[0], given[1])"
    picked = form.run(ask, [GOOD, AGENT])
    words = ("Iodophor", "1:50", "10", 4)
    assert tuple(picked[name] for name in ("substance", "dilution", "contact_minutes", "consumable")) == words
    sent = form.run("return it.washContent(given)", {**picked, "litres": "7,5"})
    assert (sent["consumable"], sent["litres"]) == (4, "7.5")
    bare = form.run(ask, [GOOD, {**AGENT, "active_substance": "", "dilution": "", "contact_minutes": None}])
    assert (bare["substance"], bare["dilution"], bare["contact_minutes"]) == ("Iodophor 5 l", "1:100", "5")
    assert form.run(ask, [picked, AGENT])["consumable"] is None


@pytest.mark.parametrize(("seconds", "is_same"), [(0, True), (299, True), (300, False), (-299, True)])
def test_the_same_wash_within_five_minutes_is_one_wash(form: Module, seconds, is_same) -> None:
    one = {**GOOD, "washed_at": NOW}
    later = datetime.fromisoformat(NOW) + timedelta(seconds=seconds)
    other = {**one, "washed_at": later.isoformat()}

    assert form.run("return it.isSameWash(given[0], given[1])", [one, other]) is is_same
    assert form.run("return it.isSameWash(given[0], given[1])", [one, {**other, "dilution": "1:50"}]) is False


@pytest.mark.parametrize("hours", range(0, 24 * 365, 24 * 13 + 7))
def test_days_and_hours_are_those_of_pythons_own_calendar(when: Module, hours) -> None:
    at = datetime(2026, 1, 1, 0, 30, tzinfo=UTC) + timedelta(hours=hours)
    there = at.astimezone(ZoneInfo(LONDON))
    given = {"at": at.isoformat(), "zone": LONDON}

    said = when.run("return [it.clock(given.at, given.zone), it.dayOf(given.at, given.zone)]", given)
    words = when.run("return it.dayWords(given)", there.date().isoformat())
    after = when.run("return it.daysAfter(given, 28)", there.date().isoformat())

    assert said == [f"{there:%H:%M}", there.date().isoformat()]
    assert words == f"{there:%a} {there.day} {there:%b}"
    assert after == (there.date() + timedelta(days=28)).isoformat()
