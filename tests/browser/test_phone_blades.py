"""Knives on the phone: cows on each edge as the server counts them, on random visits; the next knife; the words."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Browser

from tests.browser.phone_modules import Module, module_alone
from visits.domain.kit.blade_kinds import BladeKind, Hand
from visits.domain.kit.edge_lives import BladeLog, Edge, Sharpened, edges_of
from visits.domain.kit.edge_log import CowCut, Turn, cows_by_blade, last_in_hand

pytestmark = pytest.mark.xdist_group("browser")
BEFORE, NOW, VAN = 1, 2, 9  # the visit before and this one, of one van
DAY = datetime(2026, 11, 30, 8, tzinfo=UTC)
BLADES = (1, 2, 3)
RARELY = ((), (), (), (), (1,), (2, 3))
PARTS = ("in_hand", "went_dull", "cracked", "chipped")
STANDS = """
return given.map(({ blades, turns, cows }) => it.bladesNow(blades, turns, cows)
  .map(({ blade, cows, isDull, isInHand }) => [blade.id, cows, isDull, isInHand]));
"""
some = st.sets(st.sampled_from(BLADES), max_size=2)


@pytest.fixture(scope="module")
def rules(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "rules_blades.js") as module:
        yield module


@pytest.fixture(scope="module")
def turns(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "blade_turns.js") as module:
        yield module


@pytest.fixture(scope="module")
def words(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "blade_words.js") as module:
        yield module


def at(minute: int) -> datetime:
    return DAY + timedelta(minutes=minute)


@st.composite
def turns_of(draw: st.DrawFn, visit: int, first: int) -> list[Turn]:
    """Each at a minute of its own; what is cracked or chipped is not in hand."""
    minutes = draw(st.lists(st.integers(first, first + 20), max_size=5, unique=True))
    made = []
    for minute in sorted(minutes):
        broken = frozenset(draw(st.sampled_from([(), (), (), (1,), (2,)])))
        in_hand, dull = frozenset(draw(some)) - broken, frozenset(draw(st.sampled_from(RARELY)))
        is_chip = draw(st.booleans())
        faults = {"chipped" if is_chip else "cracked": broken}
        made.append(Turn(visit, VAN, at(minute), in_hand, went_dull=dull, **faults))
    return made


Days = tuple[list[Turn], list[Turn], list[CowCut], dict[int, int | None]]
days: st.SearchStrategy[Days] = st.tuples(
    turns_of(BEFORE, 0),
    turns_of(NOW, 60),
    st.lists(
        st.tuples(st.just(BEFORE), st.integers(0, 21)) | st.tuples(st.just(NOW), st.integers(59, 82)),
        max_size=12,
    ).map(lambda cows: [CowCut(visit, VAN, at(minute)) for visit, minute in cows]),
    # Sharpened between the visits, in the midst of one, or never.
    st.fixed_dictionaries(dict.fromkeys(BLADES, st.none() | st.integers(0, 85))),
)


def edge_now(blade: int, day: Days, visits: tuple[int, ...]) -> Edge:
    """By the server's rules: the edge on the blade after those visits."""
    said = [turn for turn in (*day[0], *day[1]) if turn.visit in visits]
    cows = cows_by_blade([cow for cow in day[2] if cow.visit in visits], said)
    sharpened = day[3][blade]
    log = BladeLog(
        blade,
        BladeKind.HOOF_KNIFE,
        Hand.RIGHT,
        at(-600),
        turns=tuple(turn for turn in said if any(blade in getattr(turn, part) for part in PARTS)),
        sharpened=() if sharpened is None else (Sharpened(at(sharpened)),),
    )
    return edges_of(log, cows.get(blade, []))[-1]


def on_phone(day: Days) -> dict[str, Any]:
    """The papers told without this visit, and what this visit says."""
    held = last_in_hand(day[0], VAN, at(59))
    papers = []
    for blade in BLADES:
        edge = edge_now(blade, day, (BEFORE,))
        papers.append(
            {
                "id": blade,
                "cows_on_edge": edge.cows,
                "edge_since": edge.begun_at.isoformat(),
                "is_dull": edge.is_over,
                "is_in_hand": blade in held,
                "may_cut": True,
            }
        )
    said = [
        {"at": ms(turn.at), "record": str(n), **{part: sorted(getattr(turn, part)) for part in PARTS}}
        for n, turn in enumerate(day[1])
    ]
    return {"blades": papers, "turns": said[::-1], "cows": [ms(cow.at) for cow in day[2] if cow.visit == NOW]}


def ms(moment: datetime) -> float:
    return moment.timestamp() * 1000


def test_the_cows_on_each_edge_and_what_is_in_hand_are_those_of_the_server(rules: Module) -> None:
    met = {"dull": 0, "cows": 0}

    @settings(max_examples=20, suppress_health_check=list(HealthCheck), phases=[Phase.generate])
    @given(st.lists(days, min_size=10, max_size=10))
    def compare(many: list[Days]) -> None:
        for day, told in zip(many, rules.run(STANDS, [on_phone(day) for day in many]), strict=True):
            held = last_in_hand([*day[0], *day[1]], VAN, at(999))
            broken = {key for turn in day[1] for key in (*turn.cracked, *turn.chipped)}
            for blade, cows, is_dull, is_in_hand in told:
                edge = edge_now(blade, day, (BEFORE, NOW))
                assert cows == edge.cows, (blade, day)
                assert is_in_hand == (blade in held and blade not in broken)
                if not broken & {blade}:
                    assert is_dull == edge.is_over
                met["dull"] += is_dull
                met["cows"] += cows

    compare()
    assert min(met.values()) > 100, "edges went dull, and cows were counted"


def row(key: int, cows: int = 0, **changes: object) -> dict[str, Any]:
    """How one blade stands now."""
    blade = {
        "id": key,
        "name": f"Knife {key}",
        "kind": "hoof_knife",
        "hand": "right",
        "counted_on": 25,
        "is_turned": False,
        "may_cut": True,
    }
    stand = {"isInHand": False, "isDull": False, "dulledAt": None, "fault": "", "mayCut": True}
    return {"blade": blade | changes.pop("blade", {}), "cows": cows, **stand, **changes}


@pytest.mark.parametrize(
    ("others", "key"),
    [
        ((row(2, 12), row(3, 4)), 3),
        ((row(2, 4), row(3, 4)), 2),
        ((row(2, 4, isDull=True), row(3, 20)), 3),
        ((row(2, 4, mayCut=False), row(3, 20)), 3),
        ((row(2, 4, isInHand=True), row(3, 20)), 3),
        ((row(2, 4, blade={"hand": "left"}), row(3, 20)), 3),
        ((row(2, 4, blade={"kind": "loop_knife"}),), None),
        ((), None),
    ],
)
def test_next_comes_the_sharp_one_of_its_kind_and_hand_with_the_fewest_cows(
    turns: Module, others, key
) -> None:
    rows = [row(1, 31, isDull=True), *others]
    found = turns.run("return it.nextBlade(given, given[0].blade)", rows)
    assert (found and found["blade"]["id"]) == key


@pytest.mark.parametrize(
    ("given", "title", "short"),
    [
        ((row(1, 17), row(2)), "No knife in hand", "none in hand"),
        ((row(1, 17, isInHand=True), row(2)), "Knife 1: 17 cows on this edge", "17 cows"),
        ((row(1, 1, isInHand=True),), "Knife 1: 1 cow on this edge", "1 cow"),
        ((row(1, 31, isInHand=True, isDull=True),), "Knife 1: dull after 31 cows", "dull"),
        ((row(1, 17, isInHand=True), row(2, 20, isInHand=True)), "Knife 1 and Knife 2 in hand", "20 cows"),
        (
            (row(1, 17, isInHand=True), row(2, 200, isInHand=True, blade={"counted_on": 400})),
            "Knife 1 and Knife 2 in hand",
            "17 cows",
        ),
        ((row(1, 3, fault="cracked", mayCut=False),), "No knife in hand", "none in hand"),
        ((row(1), row(2, 9, isInHand=True, blade={"is_turned": True})), "Only Knife 2 in hand", "9 cows"),
    ],
)
def test_what_is_in_hand_is_said_in_words(words: Module, given, title, short) -> None:
    assert words.run("return [it.handWords(given), it.inHandShort(given)]", list(given)) == [title, short]


@pytest.mark.parametrize(
    ("stand", "is_past"),
    [
        (row(1, 25), False),
        (row(1, 26), True),
        (row(1, 26, isDull=True), False),
        (row(1, 26, mayCut=False), False),
    ],
)
def test_an_edge_is_past_what_it_is_counted_on_for_at_the_next_cow(words: Module, stand, is_past) -> None:
    assert words.run("return it.isPast(given)", stand) is is_past


def test_a_turn_is_told_by_the_names_of_its_blades(words: Module) -> None:
    blades = [{"id": 1, "name": "Red handle"}, {"id": 2, "name": "Blue handle"}]
    said = {"in_hand": [2], "went_dull": [1], "cracked": [], "chipped": [99]}
    told = words.run("return it.turnWords(given.said, given.blades)", {"said": said, "blades": blades})
    assert told == "Blue handle in hand; Red handle went dull; a blade of another van chipped"


def test_tonight_are_those_that_went_dull_today_and_the_broken(words: Module) -> None:
    rows = [
        row(1, isDull=True),
        row(2, isDull=True, dulledAt=5),
        row(3, fault="chipped", mayCut=False),
        row(4),
    ]
    assert words.run(
        "return Object.values(it.eveningRows(given)).map((each) => each.map((one) => one.blade.id))",
        rows,
    ) == [[2], [3]]


@pytest.mark.parametrize(
    ("path", "place"),
    [
        ("content.went_dull[0]", "Red handle, went dull"),
        ("content.in_hand[0]", "The blade, in hand"),
        ("content.at", "When"),
    ],
)
def test_what_the_office_did_not_take_of_a_turn_is_named(browser: Browser, path: str, place: str) -> None:
    given = {
        "path": path,
        "content": {"in_hand": [99], "went_dull": [1]},
        "papers": {"blades": [{"id": 1, "name": "Red handle"}]},
    }
    with module_alone(browser, "fault_words.js") as module:
        assert module.run("return it.faultPlace(given.path, given.content, given.papers)", given) == place
