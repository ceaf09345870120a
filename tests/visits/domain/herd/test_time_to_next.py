from dataclasses import replace

import pytest

from tests.visits.domain.herd.small_herds import LONG_AGO, day, herd, look
from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import CowLife, CowSeen, FootSeen, LesionSeen, RecheckTold
from visits.domain.herd.time_to_next import (
    SpellEnd,
    TimeRule,
    free_of_treatment_at,
    spells_of,
    time_to_next,
)
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.visit_states import VisitReason

AGAIN, LEFT, LOST, FREE = (
    SpellEnd.TREATED_AGAIN,
    SpellEnd.LEFT_THE_HERD,
    SpellEnd.LOST_FROM_SIGHT,
    SpellEnd.STILL_FREE,
)


def spells(*looks, left=None, rule=None):
    """The spells of cow 1, in days; another cow keeps the last day of work."""
    life = CowLife(1, "1", LONG_AGO, None if left is None else day(left))
    found = spells_of(herd(*looks, lives=[life]), rule)
    return [(spell.days, spell.end) for spell in found if spell.cow == 1]


@pytest.mark.parametrize(
    ("looks", "left", "expected"),
    [
        pytest.param([look(0, "SU"), look(60, "SU")], None, [(60, AGAIN), (40, FREE)], id="treated again"),
        pytest.param([look(0, "SU")], None, [(100, FREE)], id="never again, up to the last day of work"),
        pytest.param([look(0, "SU")], 70, [(70, LEFT)], id="left the herd"),
        pytest.param([look(0, "SU")], 150, [(100, FREE)], id="left after the last day of work"),
        pytest.param([look(0, "SU"), look(28)], None, [(100, FREE)], id="a re-check where nothing was done"),
        pytest.param(
            [look(0, "SU"), look(28, "SU", treated=False, reason=VisitReason.RECHECK)],
            None,
            [(100, FREE)],
            id="a re-check that still saw it healing",
        ),
        pytest.param(
            [look(0, "SU"), look(28, "SU", reason=VisitReason.RECHECK)],
            None,
            [(28, AGAIN), (72, FREE)],
            id="a re-check at which the foot was treated again",
        ),
        pytest.param(
            [look(0, "SU"), look(28, "SU", treated=False)],
            None,
            [(28, AGAIN), (72, FREE)],
            id="seen again when nobody had planned to look",
        ),
        pytest.param(
            [look(0, "SU"), look(30, "SU", foot=Foot.RIGHT_HIND)], None, [(100, FREE), (70, FREE)], id="feet"
        ),
        pytest.param(
            [look(0, treated=True), look(10, "DD")], None, [(10, AGAIN), (90, FREE)], id="cut for good"
        ),
        pytest.param([look(0)], None, [], id="a plain trim"),
        pytest.param([look(100, "SU")], None, [], id="treated on the last day of work"),
    ],
)
def test_a_spell_goes_from_one_treatment_of_a_foot_to_the_next(looks, left, expected):
    assert spells(*looks, look(100, cow=2), left=left) == expected


def test_a_look_that_closes_a_recheck_is_planned_on_whatever_visit_it_falls():
    booked = RecheckTold(1, Foot.LEFT_HIND, day(0), day(21), day(35), looked_on=day(28))
    looks = (look(0, "SU"), look(28, "SU", treated=False), look(100, cow=2))
    assert [spell.days for spell in spells_of(herd(*looks, rechecks=(booked,)))] == [100]
    other = replace(booked, foot=Foot.RIGHT_HIND)
    assert [spell.days for spell in spells_of(herd(*looks, rechecks=(other,)))] == [28, 72]


def test_healthy_skin_noted_as_m0_is_no_treatment():
    healthy = LesionSeen(LesionCode.DD, Claw.SKIN, 10, dd_stage=DDStage.M0)
    clear = CowSeen(1, day(50), 50, VisitReason.ROUTINE, (FootSeen(Foot.LEFT_HIND, (healthy,)),))
    assert spells(look(0, "DD"), clear, look(100, cow=2)) == [(100, FREE)]


def test_a_cow_not_seen_for_longer_than_a_lactation_is_followed_to_the_day_she_was_last_seen():
    looks = [look(0, "SU"), look(28, reason=VisitReason.RECHECK), look(600, cow=2)]
    assert spells(*looks) == [(28, LOST)]
    assert spells(*looks, rule=TimeRule(lost_after_days=572)) == [(600, FREE)]
    assert spells(look(0, "SU"), look(600, cow=2)) == []


def test_the_curve_is_that_of_the_spells_begun_in_the_time_asked_for():
    facts = herd(
        look(0, "SU"),
        look(50, "SU"),
        look(10, "DD", cow=2),
        look(200, "SU", cow=3),
        look(220, "SU", cow=3),
        look(400, cow=4),
    )
    whole = time_to_next(facts)
    assert (len(whole.durations), whole.events) == (5, 2)
    first_year = time_to_next(facts, day(0), day(50))
    assert first_year.durations == (50, 390)
    assert free_of_treatment_at(first_year, 100).survival == pytest.approx(0.5)
    assert free_of_treatment_at(first_year, 391) is None


def test_a_farm_that_was_never_visited_has_no_curve():
    assert time_to_next(herd()).durations == ()


def test_how_a_spell_ended_is_written_in_words():
    assert [end.label for end in SpellEnd] == [
        "treated again",
        "left the herd",
        "lost from sight",
        "still free",
    ]
