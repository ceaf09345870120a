"""Rules and prices in words."""

import pytest

from tests.visits.domain.planning.hand_made import board, job, week
from visits.domain.planning.moves.price_moves import Price
from visits.domain.planning.moves.say_why_not import NOTHING, say_price, say_why_not
from visits.domain.planning.moves.why_not import Rule, WhyNot

NAMES = ["Low Croft", "High Fold"]
SAID = {
    WhyNot(Rule.BEGUN): "This day has begun.",
    WhyNot(Rule.LEFT_BEHIND): (
        "The day it leaves cannot be driven without it: the road by this farm is the quicker one."
    ),
    WhyNot(Rule.CREW, 0): "Low Croft is kept for another van.",
    WhyNot(Rule.HELD, 0): "Low Croft keeps its hour on another day.",
    WhyNot(Rule.NO_HOURS, 1): "Nobody can work at High Fold within the hours of this day.",
    WhyNot(Rule.COWS, over=1): "1 cow over the limit of the day.",
    WhyNot(Rule.COWS, over=5): "5 cows over the limit of the day.",
    WhyNot(Rule.HYGIENE, 1, 0): "High Fold (hygiene 1) must not come after Low Croft (hygiene 2).",
    WhyNot(Rule.TOO_LATE, 0, over=601): "Low Croft would begin 2 min too late for its hours.",
    WhyNot(Rule.HOME_LATE, over=60 * 600): "The van would be home 1 h after its day ends.",
    WhyNot(Rule.LONG_DAY, over=75 * 600): "The day would be 1 h 15 min over its limit.",
    WhyNot(Rule.MEAL): "No gap would be left for the meal.",
    WhyNot(Rule.MEAL_OR_LONG_DAY): "No gap would be left for the meal within the limit of the day.",
}


@pytest.fixture(scope="module")
def known():
    return board(week(job("a", "far"), job("b", "near"), hygiene={"far": 2, "near": 1}))


@pytest.mark.parametrize(("why", "words"), SAID.items(), ids=[why.rule for why in SAID])
def test_each_rule_has_its_sentence(why, words, known):
    assert say_why_not(why, known, NAMES) == words


def test_every_rule_is_said():
    assert {why.rule for why in SAID} == set(Rule)


def test_a_lock_is_named_as_what_stands_in_the_way(known):
    said = say_why_not(WhyNot(Rule.CREW, 0), known, NAMES, kept=[0])
    assert said == "Low Croft is locked to its van and day: unlock it first."
    assert "locked" not in say_why_not(WhyNot(Rule.COWS, over=1), known, NAMES, kept=[0])


@pytest.mark.parametrize(
    ("price", "money", "words"),
    [
        (Price(12 * 600, 8400, 420.0), "£4.20", "12 min more, 8.4 km more, £4.20 more"),
        (Price(-85 * 600, -200, -3557.0), "£35.57", "1 h 25 min less, 0.2 km less, £35.57 less"),
        (Price(600, -1500, -1.0), "£0.01", "1 min more, 1.5 km less, £0.01 less"),
        (Price(0, 0, 0.0), "", NOTHING),
        (Price(200, 40, 0.4), "", NOTHING),
    ],
)
def test_a_price_is_more_or_less_time_road_and_money(price, money, words):
    assert say_price(price, money) == words
