"""The tally of the day on the phone: tables worked by hand."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from uuid import UUID

import pytest
from playwright.sync_api import Browser

from tests.browser.phone_modules import Module, module_alone

pytestmark = pytest.mark.xdist_group("browser")
NINE = datetime(2026, 3, 31, 9, tzinfo=UTC)
HALF_DONE = (0, 6, 11, 18, 25)  # minutes after nine at which five cows came in: gaps of 6, 5, 7, 7


@pytest.fixture(scope="module")
def tally(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "tally.js") as module:
        yield module


def uuid7_of(at: datetime) -> str:
    """RFC 9562, 5.7: 48 bits of milliseconds, the version, and what is random (here nothing)."""
    return str(UUID(int=int(at.timestamp() * 1000) << 80 | 7 << 76 | 2 << 62))


def cow(minute: float, *kinds: str, seconds: int | None = None, **changes: object) -> dict[str, object]:
    """A cow who came in so many minutes after nine and was put down four minutes later."""
    begun = NINE + timedelta(minutes=minute)
    feet = [
        {"foot": "LH", "findings": [], "actions": [{"kind": k, "claw": "", "block_kind": ""} for k in kinds]}
    ]
    return {
        "kind": "cow",
        "cowKey": f"c{minute}",
        "record": uuid7_of(begun),
        "made_at": (begun + timedelta(minutes=4)).isoformat(),
        "placed_at": None,
        "state": "waiting",
        "content": {"cow": {"id": 1}, "entry": {"crush_seconds": seconds, "feet": feet}},
        **changes,
    }


def day(
    tally: Module,
    cows: list[dict[str, object]],
    heads: int = 0,
    until: str | None = None,
    now: datetime = NINE,
) -> dict[str, object]:
    shown = [[one["cowKey"], one] for one in cows]
    papers = {"cows": [], "queue": [], "visit": {"head_count": heads, "done_by": until, "day": "2026-03-31"}}
    return tally.run(
        "return it.tallyOf(new Map(given.shown), given.papers, given.now)",
        {"shown": shown, "papers": papers, "now": now.isoformat()},
    )


def test_a_day_not_begun_says_how_many_cows_there_are_and_no_more(tally: Module) -> None:
    assert day(tally, [], heads=31) == {
        "done": 0,
        "left": 31,
        "blocks": 0,
        "wraps": 0,
        "secondsPerCow": None,
        "by": "",
        "finish": None,
        "doneBy": None,
        "minutesOver": 0,
        "cowsThatFit": None,
    }


def test_where_nobody_said_how_many_cows_nothing_is_left_to_reckon_with(tally: Module) -> None:
    said = day(tally, [cow(minute) for minute in HALF_DONE], heads=0)
    assert (said["done"], said["left"], said["finish"]) == (5, None, None)


def test_blocks_and_wraps_are_counted_over_all_cows(tally: Module) -> None:
    said = day(tally, [cow(0, "block", "wrap", "relief"), cow(9, "wrap", "block_off"), cow(20)], heads=3)
    assert (said["done"], said["left"], said["blocks"], said["wraps"]) == (3, 0, 1, 2)


# Worked by hand: sorted gaps and their middle one, or the mean of the middle two.
@pytest.mark.parametrize(
    ("minutes", "expected"),
    [
        (HALF_DONE, 6.5),  # 5 6 7 7
        ((0, 5, 11, 20), 6),  # 5 6 9
        ((0, 5, 11, 71, 78), 6.5),  # 5 6 7 60: the hour of lunch does not count for more than one gap
        ((11, 0, 20, 5), 6),  # in whatever order they are kept
    ],
)
def test_minutes_a_cow_are_the_median_from_cow_to_cow(
    tally: Module, minutes: tuple[float], expected: float
) -> None:
    said = day(tally, [cow(minute) for minute in minutes], heads=40)
    assert (said["by"], said["secondsPerCow"]) == ("gaps", expected * 60)


def test_with_three_cows_or_fewer_the_time_in_the_crush_stands_in_and_says_so(tally: Module) -> None:
    said = day(tally, [cow(0, seconds=300), cow(9, seconds=420), cow(30)], heads=40)
    assert (said["by"], said["secondsPerCow"]) == ("crush", 360)
    assert day(tally, [cow(0), cow(9)], heads=40)["by"] == ""


def test_a_change_to_a_cow_in_the_evening_does_not_slow_the_morning(tally: Module) -> None:
    late = (NINE + timedelta(hours=8)).isoformat()
    cows = [cow(minute) for minute in HALF_DONE]
    cows[1] |= {"made_at": late, "state": "sent", "placed_at": late}
    assert day(tally, cows, heads=9)["secondsPerCow"] == 6.5 * 60


def test_a_cow_of_another_phone_stands_at_the_server_s_hour(tally: Module) -> None:
    """That phone's clock is five hours fast, and the server knew."""
    cows = [cow(minute) for minute in HALF_DONE]
    cows[2] = cow(311, cowKey="c9", state="other", placed_at=(NINE + timedelta(minutes=11)).isoformat())
    assert day(tally, cows, heads=9)["secondsPerCow"] == 6.5 * 60


# Five cows at 6.5 min, ten left: 65 min of work. It is 09:30, so done at 10:35.
@pytest.mark.parametrize(
    ("milking", "over", "fit", "caution"),
    [
        ("2026-03-31T10:35:00Z", 0, 10, ""),
        ("2026-03-31T10:34:30Z", 1, 9, "Milking is at 10:34: time for about 9 of the 10 cows left."),
        ("2026-03-31T10:00:00Z", 35, 4, "Milking is at 10:00: time for about 4 of the 10 cows left."),
        ("2026-03-31T09:36:29Z", 59, 0, "Milking is at 09:36: no time for the 10 cows left."),
        ("2026-03-31T09:00:00Z", 95, 0, "Milking is at 09:00: no time for the 10 cows left."),
    ],
)
def test_the_finish_is_held_against_the_milking(
    tally: Module, milking: str, over: int, fit: int, caution: str
) -> None:
    now = NINE + timedelta(minutes=30)
    said = day(tally, [cow(minute) for minute in HALF_DONE], heads=15, until=milking, now=now)
    assert said["finish"] == "2026-03-31T10:35:00.000Z"
    assert (said["minutesOver"], said["cowsThatFit"]) == (over, fit)
    words = "return it.milkingCaution(given, (iso) => iso.slice(11, 16))"
    assert tally.run(words, said) == caution


def test_the_last_cow_is_one_cow(tally: Module) -> None:
    cows, now = [cow(minute) for minute in HALF_DONE], NINE + timedelta(minutes=30)
    said = day(tally, cows, heads=6, until="2026-03-31T09:31:00Z", now=now)
    assert tally.run("return it.milkingCaution(given, () => '09:31')", said) == (
        "Milking is at 09:31: no time for the cow left."
    )


def test_cows_written_down_all_at_once_leave_no_pace_to_divide_by(tally: Module) -> None:
    cows = [cow(3, cowKey=f"c{nth}") for nth in range(5)]
    said = day(tally, cows, heads=15, until="2026-03-31T10:00:00Z")
    assert (said["secondsPerCow"], said["minutesOver"], said["cowsThatFit"]) == (0, 0, 10)


def test_with_nobody_left_or_no_milking_there_is_nothing_to_warn_of(tally: Module) -> None:
    cows = [cow(minute) for minute in HALF_DONE]
    done = day(tally, cows, heads=5, until="2026-03-31T09:00:00Z", now=NINE + timedelta(hours=2))
    assert (done["left"], done["finish"], done["minutesOver"]) == (0, None, 0)
    free = day(tally, cows, heads=15, now=NINE)
    assert (free["finish"] is not None, free["minutesOver"], free["cowsThatFit"]) == (True, 0, None)


def test_the_clocks_going_forward_do_not_move_the_estimate(tally: Module) -> None:
    """Summer time begins on 29 March 2026 at 01:00 UTC; instants know nothing of it."""
    now = datetime(2026, 3, 29, 0, 50, tzinfo=UTC)
    said = day(tally, [cow(minute) for minute in HALF_DONE], heads=15, until="2026-03-29T02:00:00Z", now=now)
    assert (said["finish"], said["minutesOver"]) == ("2026-03-29T01:55:00.000Z", 0)
