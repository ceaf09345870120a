import pytest

from visits.domain.planning.reasons.names import Names, Told, things, told
from visits.domain.planning.reasons.reason import Reason

FIGURES = {
    "start": "2026-03-03T09:05:30+00:00",
    "due": "2026-12-31",
    "money": -250.0,
    "minutes": 125,
    "little": 0.2,
    "nothing": None,
    "job": "j1",
}
PENCE = Names(job={"j1": "Hill Farm"}.__getitem__, shift=str.upper, money=lambda value: f"£{value / 100:.2f}")


def test_figures_are_told_as_the_trade_writes_them():
    words = Told(FIGURES, PENCE)
    assert words.moment("start") == "Tuesday 09:05"
    assert words.day("due") == "Thursday 31 December"
    assert words.day("start") == "Tuesday 3 March"
    assert words.more_or_less("money") == "£2.50 less"
    assert words.how_long("minutes") == "2 h 05 min"
    assert words.minutes("minutes") == "125 minutes"
    assert words.job("job") == "Hill Farm"
    assert words.whole("little") == "less than 1"
    assert (words.has("job"), words.has("nothing"), words.has("other")) == (True, False, False)


def test_nothing_is_said_without_its_figure():
    with pytest.raises(KeyError):
        told(Reason("detour", {}), Names()).number("km")


def test_one_is_not_many():
    assert (things(1, "cow", "cows"), things(1200, "cow", "cows")) == ("1 cow", "1,200 cows")
