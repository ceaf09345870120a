"""What the sentences say, word for word, and what they keep quiet about."""

import pytest

from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.say_reason import say_reason

MOMENT = "2026-03-03T09:30:00+00:00"
ELSEWHERE = {"shift": "Ben", "start": MOMENT, "days_late": 0}
DETOUR = {"km": 3.2, "drive_minutes": 8.4, "free_minutes": 0, "money": 4100}


@pytest.mark.parametrize(
    ("code", "figures", "sentence"),
    [
        ("promised", {"start": MOMENT}, "Promised for Tuesday 09:30."),
        (
            "late",
            {"due": "2026-03-01", "days": 2, "money": 1000},
            "2 days after its last day, Sunday 1 March, which costs 1,000.",
        ),
        ("late", {"due": "2026-03-01", "days": 1, "money": 0}, "1 day after its last day, Sunday 1 March."),
        (
            "due-day",
            {"due": "2026-03-03", "late_from": "2026-03-04", "money": 500},
            "Tuesday 3 March is its last day: it would be late from Wednesday 4 March on, at 500 a day.",
        ),
        (
            "only-day",
            {"day": "2026-03-03"},
            "Tuesday 3 March is the only day on which a shift may do it in its open hours.",
        ),
        (
            "only-fits-here",
            {"tried": 1},
            "As the week stands it does not fit into the one other shift that its open hours allow.",
        ),
        (
            "only-fits-here",
            {"tried": 4},
            "As the week stands it fits into none of the 4 other shifts that its open hours allow.",
        ),
        (
            "hygiene",
            {"level": 1, "money": 0, "after": "Hill", "after_level": 0},
            "It must come after Hill (hygiene 0): its own hygiene is 1.",
        ),
        (
            "hygiene",
            {
                "level": 1,
                "money": 300,
                "after": "Hill",
                "after_level": 0,
                "before": "Moss",
                "before_level": 3,
            },
            "It must come after Hill (hygiene 0) and before Moss (hygiene 3): its own hygiene is 1. "
            "But for that, this day could cost 300 less.",
        ),
        (
            "next-best",
            ELSEWHERE | {"more": 1234},
            "The next-best shift is Ben on Tuesday 09:30: that would cost 1,234 more.",
        ),
        (
            "next-best",
            ELSEWHERE | {"more": 0.1},
            "The next-best shift is Ben on Tuesday 09:30: that would cost the same.",
        ),
        (
            "next-best",
            ELSEWHERE | {"more": 5, "days_late": 2},
            "The next-best shift is Ben on Tuesday 09:30, 2 days late: that would cost 5 more.",
        ),
        (
            "other-place",
            ELSEWHERE | {"more": -20},
            "The next-best place on this day is 09:30: that would cost 20 less.",
        ),
        (
            "detour",
            DETOUR,
            "Coming here adds 3.2 km and 8 min of driving; 4,100 in all, the visit's time included.",
        ),
        (
            "detour",
            DETOUR | {"km": 0, "drive_minutes": 0, "free_minutes": -12},
            "Coming here adds no road at all, 12 min of waiting and meal less; "
            "4,100 in all, the visit's time included.",
        ),
        (
            "worth-doing",
            {"money": 4100, "leave_out": 9000},
            "Leaving it out would cost 9,000; here it costs 4,100.",
        ),
    ],
)
def test_the_sentence_is_plain_and_holds_the_figures(code, figures, sentence):
    assert say_reason(Reason(code, figures)) == sentence
