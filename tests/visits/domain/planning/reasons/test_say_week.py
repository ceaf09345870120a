from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.say_reason import say_reason

PROMISE = {
    "promised": "2026-03-03T09:30:00+00:00",
    "shift": "Ben",
    "start": "2026-03-03T08:00:00+00:00",
    "money": 1240.0,
    "room_for": None,
}
SUMS = {
    "done": 31,
    "left_out": 9,
    "must_left_out": 0,
    "km": 900.5,
    "hours": 45.06,
    "days_late": 1,
    "road_money": 1,
    "money": 264073.9,
}


def promise(**changes):
    return say_reason(Reason("promise", PROMISE | changes))


def test_what_a_promise_costs_is_said_as_the_lower_figure_it_is():
    said = promise()
    assert said.startswith(
        "Promised for Tuesday 09:30: at Tuesday 08:00 with Ben the week would cost at least 1,240 less (found by"
    )
    assert "with room for Hill" in promise(room_for="Hill")


def test_a_promise_without_a_cheaper_hour_is_not_called_free():
    assert "no cheaper hour was found for it, by trying" in promise(money=0.0)
    assert promise(money=-5.0, room_for="Hill").endswith("there would be room for Hill as well.")


def test_a_rule_is_named_with_its_sums():
    assert say_reason(Reason("this-plan", SUMS)) == (
        "This plan: 31 visits, 9 left out; 900 km and 45.1 h at work, 1 day late; 264,074 in all."
    )
    assert "9 left out, 2 of them to be done this week;" in say_reason(
        Reason("same-area-same-day", SUMS | {"must_left_out": 2})
    )
    assert say_reason(Reason("nearest-by-due-date", SUMS)).startswith(
        "Due first goes first, of those the nearest"
    )
