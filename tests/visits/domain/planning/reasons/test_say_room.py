import pytest

from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.say_reason import say_reason

AT = {
    "shift": "Ben",
    "start": "2026-03-03T09:30:00+00:00",
    "finish": "2026-03-03T10:15:00+00:00",
    "behind": None,
    "money": 4100,
}
FIT = "it would fit on Tuesday 09:30 with Ben, for 4,100"


@pytest.mark.parametrize(
    ("code", "figures", "sentence"),
    [
        (
            "price",
            {"leave_out": 3000, "more": 1100},
            "It fits on Tuesday 09:30 with Ben for 4,100; leaving it out costs 3,000: "
            "it would have to be worth 1,100 more.",
        ),
        ("window-end", {"minutes": 1}, f"If its open hours on Tuesday 3 March ended 1 minute later, {FIT}."),
        (
            "window-start",
            {"minutes": 9},
            f"If its open hours on Tuesday 3 March began 9 minutes earlier, {FIT}.",
        ),
        (
            "work-limit",
            {"minutes": 20, "work_limit": 620},
            f"With 20 minutes more work for Ben on Tuesday 3 March (10 h 20 min in all) {FIT}.",
        ),
        ("shift-end", {"minutes": 20}, f"If Ben on Tuesday 3 March could end 20 minutes later, {FIT}."),
        (
            "meal",
            {"minutes": 10, "meal_minutes": 20},
            f"With the meal of Ben on Tuesday 3 March 10 minutes shorter (20 left), {FIT}.",
        ),
        (
            "cows-limit",
            {"cows": 1, "cows_limit": 61},
            f"With 1 cow more for Ben on Tuesday 3 March (61 in all) {FIT}.",
        ),
        (
            "hygiene-order",
            {"level": 0, "other": "Moss", "other_level": 2, "others": 1},
            f"But for hygiene {FIT}: its own is 0, and Moss (hygiene 2) would come out of order.",
        ),
        (
            "move-one",
            {"other": "Hill", "other_shift": "Ann", "other_start": "2026-03-05T13:00:00+00:00"},
            "Moving Hill to Thursday 13:00 with Ann gives room on Tuesday 09:30 with Ben; "
            "the two then cost 4,100 more.",
        ),
        (
            "let-one-go",
            {"other": "Hill", "leave_out": 3900},
            "Leaving out Hill instead gives room on Tuesday 09:30 with Ben, for 4,100 with Hill left out; "
            "leaving this visit out costs 3,900.",
        ),
        (
            "other-hours",
            {},
            "If the farm could have it on Tuesday 3 March from 09:30 to 10:15, Ben could do it for 4,100.",
        ),
        ("no-promise", {}, f"Without its promised hour {FIT}."),
        ("promise-later", {"minutes": 30}, f"Promised 30 minutes later, {FIT}."),
    ],
)
def test_the_sentence_says_which_limit_by_how_much_and_where(code, figures, sentence):
    assert say_reason(Reason(code, AT | figures)) == sentence


OWN = {
    "minutes": 130,
    "leave": "2026-03-03T08:40:00+00:00",
    "back": "2026-03-03T10:50:00+00:00",
    "other_ways": 0,
}


def own_van(**changes):
    return say_reason(Reason("van-of-its-own", OWN | changes))


def test_where_nothing_single_helps_it_is_said():
    told = "A van sent for it alone would do: gone from Tuesday 08:40 to 10:50, 2 h 10 min."
    assert own_van().startswith("No single limit stretched by up to four hours")
    assert own_van().endswith(told)
    assert own_van(other_ways=2) == told
    assert own_van(leave=None, back=None, other_ways=1) == (
        "It has no open hours that are long enough; a van sent for it alone would be away 2 h 10 min."
    )
    assert own_van(minutes=None, other_ways=1) == "No van goes out this week."
