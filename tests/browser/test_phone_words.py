"""Lines, days and hours on the phone: the server's own words wherever it has them."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Browser

from tests.browser.phone_entries import entries, on_wire
from tests.browser.phone_modules import Module, module_alone
from trimops.paper.days import clock, day_short, length
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_catalogue import crush_catalogue
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.entry_words import entry_words
from visits.domain.feet import FEET_IN_ORDER, Claw, Foot
from visits.domain.lesions import DDStage, LesionCode

pytestmark = pytest.mark.xdist_group("browser")
PAPERS = crush_catalogue()
ULCER = FindingEntry(LesionCode.SU, Claw.LATERAL, 4, 2)
SORE = FindingEntry(LesionCode.DD, Claw.SKIN, 10, 3, DDStage.M2)
CUT = (ActionEntry(ActionKind.LENGTH, Claw.MEDIAL), ActionEntry(ActionKind.MODEL, Claw.LATERAL))
BLOCK = ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, BlockKind.WOOD)
RELIEF = ActionEntry(ActionKind.RELIEF, Claw.LATERAL)
WRAP = ActionEntry(ActionKind.WRAP)
BLOCKED = FootEntry(Foot.LEFT_HIND, findings=(ULCER,), actions=(*CUT, RELIEF, BLOCK, WRAP))
UNCUT = tuple(ActionEntry(ActionKind.NO_CUT, claw) for claw in (Claw.LATERAL, Claw.MEDIAL))


@pytest.fixture(scope="module")
def words(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "words.js") as module:
        yield module


@pytest.fixture(scope="module")
def when(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "when.js") as module:
        yield module


def say(words: Module, function: str, value: object) -> object:
    return words.run(f"return it.{function}(given[0], given[1])", [on_wire(value), PAPERS])


def test_a_cow_reads_the_same_on_the_phone_and_on_the_pages_of_the_office(words: Module) -> None:
    @settings(max_examples=60, suppress_health_check=list(HealthCheck))
    @given(st.lists(entries, min_size=5, max_size=5))
    def compare(cows: list[CowEntry]) -> None:
        ask = "return given[0].map((entry) => it.entryWords(entry, given[1]))"
        assert words.run(ask, [on_wire(cows), PAPERS]) == [entry_words(cow) for cow in cows]

    compare()


@pytest.mark.parametrize(
    ("finding", "line"),
    [(ULCER, "outer, zone 4: sole ulcer, 2"), (SORE, "skin, zone 10: digital dermatitis M2, 3")],
)
def test_a_finding_names_claw_place_lesion_and_how_bad(
    words: Module, finding: FindingEntry, line: str
) -> None:
    assert say(words, "findingWords", finding) == line


@pytest.mark.parametrize(
    ("action", "line"),
    [
        (BLOCK, "wooden block on inner claw"),
        (ActionEntry(ActionKind.BLOCK, Claw.LATERAL, BlockKind.SHOE), "shoe on outer claw"),
        (ActionEntry(ActionKind.BLOCK_OFF, Claw.MEDIAL), "block off, inner claw"),
        (ActionEntry(ActionKind.LOOSE_HORN, Claw.LATERAL), "loose horn off, outer claw"),
        (ActionEntry(ActionKind.BLOCK, Claw.MEDIAL), "block on inner claw"),
        (WRAP, "wrapped"),
    ],
)
def test_an_action_is_named_as_a_trimmer_says_it(words: Module, action: ActionEntry, line: str) -> None:
    assert say(words, "actionWords", action) == line


@pytest.mark.parametrize(
    ("foot", "line"),
    [
        (BLOCKED, "sole ulcer, wooden block on inner claw, wrapped"),
        (
            FootEntry(Foot.LEFT_HIND, actions=(RELIEF, ActionEntry(ActionKind.LOOSE_HORN, Claw.LATERAL))),
            "trimmed",
        ),
        (FootEntry(Foot.LEFT_FORE, actions=CUT), "trimmed"),
        (FootEntry(Foot.LEFT_FORE, actions=UNCUT), "no cut needed"),
        (FootEntry(Foot.LEFT_FORE), "looked at"),
    ],
)
def test_a_foot_is_said_in_few_words(words: Module, foot: FootEntry, line: str) -> None:
    assert say(words, "footWords", foot) == line


PLAIN = tuple(FootEntry(name, actions=CUT) for name in FEET_IN_ORDER)
HIND = FEET_IN_ORDER[:2]
OFF, DRESSED = ActionEntry(ActionKind.BLOCK_OFF), ActionEntry(ActionKind.DRESSING)
THREE_NAMED = "1 foot trimmed, asymmetric claws, concave dorsal wall, corkscrew claw"
FOUR_LESIONS = tuple(FindingEntry(code, Claw.LATERAL, None, 1) for code in list(LesionCode)[:4])


@pytest.mark.parametrize(
    ("feet", "line"),
    [
        ((), "no foot lifted"),
        (PLAIN, "4 feet trimmed"),
        ((BLOCKED, *PLAIN[1:]), "4 feet trimmed, sole ulcer, block, wrap"),
        (
            (BLOCKED, FootEntry(Foot.RIGHT_HIND, actions=(*CUT, BLOCK, WRAP))),
            "2 feet trimmed, sole ulcer, 2 blocks, 2 wraps",
        ),
        ((FootEntry(Foot.LEFT_HIND, actions=UNCUT),), "1 foot no cut needed"),
        (
            (PLAIN[0], FootEntry(Foot.RIGHT_HIND, findings=(SORE,))),
            "1 foot trimmed, 1 foot looked at, digital dermatitis M2",
        ),
        ((FootEntry(Foot.LEFT_HIND, findings=FOUR_LESIONS, actions=CUT),), "1 foot trimmed, 4 lesions"),
        (
            (FootEntry(Foot.LEFT_HIND, actions=(ActionEntry(ActionKind.BLOCK_OFF),)),),
            "1 foot looked at, block off",
        ),
        ((FootEntry(Foot.LEFT_HIND, findings=FOUR_LESIONS[:3], actions=CUT),), THREE_NAMED),
        (tuple(FootEntry(name, actions=(OFF,)) for name in HIND), "2 feet looked at, 2 blocks off"),
        (tuple(FootEntry(name, actions=(*CUT, DRESSED)) for name in HIND), "2 feet trimmed, 2 dressings"),
        ((FootEntry(Foot.LEFT_HIND, swelling_above_dewclaw=True, actions=CUT),), "1 foot trimmed, vet"),
    ],
)
def test_the_button_that_keeps_her_says_what_it_keeps(
    words: Module, feet: tuple[FootEntry, ...], line: str
) -> None:
    assert say(words, "savedWords", CowEntry(feet=feet)) == line


def test_every_day_is_named_as_on_our_papers(when: Module) -> None:
    days = [date(2026, 1, 1) + timedelta(days=nth) for nth in range(1200)]
    named = when.run("return given.map((day) => it.dayWords(day))", [str(day) for day in days])
    assert named == [day_short(day) for day in days]


@pytest.mark.parametrize("zone", ["Europe/London", "Europe/Dublin", "America/New_York", "Asia/Kathmandu"])
def test_the_hour_and_the_day_are_those_of_the_business_through_summer_time(when: Module, zone: str) -> None:
    instants = [datetime(2026, 1, 1, tzinfo=UTC) + timedelta(hours=7.25 * nth) for nth in range(1300)]
    local = [at.astimezone(ZoneInfo(zone)) for at in instants]
    ask = "return given[0].map((at) => [it.clock(at, given[1]), it.dayOf(at, given[1])])"
    said = when.run(ask, [[at.isoformat() for at in instants], zone])
    assert said == [[clock(at), at.date().isoformat()] for at in local]


def test_a_length_of_time_reads_as_on_our_papers(words: Module) -> None:
    minutes = [*range(200), 1439, 59.4, 59.6]
    said = words.run("return given.map((minutes) => it.durationWords(minutes))", minutes)
    assert said == [length(timedelta(minutes=number)) for number in minutes]


@pytest.mark.parametrize(
    ("seconds", "line"),
    [(390, "7 min a cow"), (350, "6 min a cow"), (90, "1.5 min a cow"), (3, "0.5 min a cow")],
)
def test_minutes_a_cow_are_whole_unless_they_are_very_few(words: Module, seconds: int, line: str) -> None:
    assert words.run("return it.perCowWords(given)", seconds) == line


@pytest.mark.parametrize(
    ("instant", "line"),
    [
        ("2026-03-31T13:18:40Z", "done about 14:20"),
        ("2026-03-31T13:17:29Z", "done about 14:15"),
        ("2026-03-28T13:58:00Z", "done about 14:00"),  # the day before summer time
        ("2026-03-31T22:58:00Z", "done about 00:00"),
    ],
)
def test_the_end_of_the_work_is_said_to_five_minutes(words: Module, instant: str, line: str) -> None:
    assert words.run("return it.doneAboutWords(given, 'Europe/London')", instant) == line
