from itertools import pairwise
from random import Random

import pytest

from tests.visits.domain.herd.small_herds import day, herd, look
from visits.domain.feet import Claw, Foot
from visits.domain.herd.case_history import CaseKind, CaseRule, cases_of, new_cases_between
from visits.domain.herd.facts import CowSeen, FootSeen, LesionSeen
from visits.domain.herd.lesion_families import lesions_on
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.visit_states import VisitReason

NEW, REPEATED, CHRONIC = CaseKind.NEW, CaseKind.REPEATED, CaseKind.CHRONIC


def sightings(*looks, rule=None):
    """The days of each case of a herd, in order, with its kind."""
    found = cases_of(herd(*looks), rule)
    return [([(seen - day(0)).days for seen in case.presentations], case.kind) for case in found]


@pytest.mark.parametrize(
    ("looks", "expected"),
    [
        pytest.param([look(0, "SU")], [([0], NEW)], id="seen once"),
        pytest.param([look(0, "SU"), look(28, "SU")], [([0, 28], NEW)], id="seen at its re-check"),
        pytest.param([look(0, "SU"), look(93, "SU")], [([0, 93], REPEATED)], id="back after three months"),
        pytest.param([look(0, "SU"), look(150, "SU")], [([0, 150], REPEATED)], id="last day of the gap"),
        pytest.param([look(0, "SU"), look(151, "SU")], [([0], NEW), ([151], REPEATED)], id="after the gap"),
        pytest.param([look(0, "SU"), look(366, "SU")], [([0], NEW), ([366], NEW)], id="over a year later"),
        pytest.param([look(0, "SU"), look(365, "SU")], [([0], NEW), ([365], REPEATED)], id="within a year"),
        pytest.param(
            [look(0, "SU"), look(28), look(60, "SU")], [([0], NEW), ([60], REPEATED)], id="seen clear between"
        ),
        pytest.param(
            [look(0, "SU"), look(28, "SU"), look(56, "SU")], [([0, 28, 56], CHRONIC)], id="never well"
        ),
        pytest.param(
            [look(0, "SU"), look(21, "SU"), look(42, "SU")], [([0, 21, 42], NEW)], id="two re-checks"
        ),
        pytest.param([look(0, "WL"), look(28, "WLA")], [([0, 28], NEW)], id="a kind of the same lesion"),
        pytest.param([look(0, "IP"), look(28, "IP")], [([0, 28], NEW)], id="foul within four weeks"),
        pytest.param([look(0, "IP"), look(29, "IP")], [([0], NEW), ([29], REPEATED)], id="foul again"),
        pytest.param([look(0, "DD"), look(210, "DD")], [([0, 210], REPEATED)], id="a sore at the next round"),
        pytest.param(
            [look(0, "DD"), look(211, "DD")], [([0], NEW), ([211], REPEATED)], id="a sore after the gap"
        ),
        pytest.param([look(0), look(30)], [], id="clear feet"),
    ],
)
def test_sightings_are_gathered_into_cases(looks, expected):
    assert sightings(*looks) == expected


@pytest.mark.parametrize("every", [91, 122, 183])
def test_an_old_sore_seen_at_every_round_is_one_case_whatever_its_stage_and_the_rate_does_not_count_trims(
    every,
):
    stages = [DDStage.M4, DDStage.M4_1, DDStage.M3, None, DDStage.M2, DDStage.M4]
    looks = [
        CowSeen(
            1,
            day(every * number),
            number,
            VisitReason.ROUTINE,
            (FootSeen(Foot.LEFT_HIND, (LesionSeen(LesionCode.DD, Claw.SKIN, 10, dd_stage=stage),)),),
        )
        for number, stage in enumerate(stages)
    ]
    assert sightings(*looks) == [([every * number for number in range(6)], CHRONIC)]


def test_another_foot_another_cow_and_another_lesion_are_other_cases():
    found = cases_of(
        herd(look(0, "SU"), look(0, "SU", foot=Foot.RIGHT_HIND), look(0, "SU", cow=2), look(28, "DD"))
    )
    assert [(case.cow, case.foot, case.lesion, case.kind) for case in found] == [
        (1, Foot.LEFT_HIND, LesionCode.U, NEW),
        (1, Foot.RIGHT_HIND, LesionCode.U, NEW),
        (2, Foot.LEFT_HIND, LesionCode.U, NEW),
        (1, Foot.LEFT_HIND, LesionCode.DD, NEW),
    ]


def test_a_look_at_another_foot_does_not_end_a_case():
    assert sightings(look(0, "SU"), look(14, foot=Foot.RIGHT_HIND), look(28, "SU")) == [([0, 28], NEW)]


def test_healthy_skin_noted_as_m0_ends_a_case_and_is_none():
    healthy = LesionSeen(LesionCode.DD, Claw.SKIN, 10, dd_stage=DDStage.M0)
    clear = CowSeen(1, day(14), 14, VisitReason.RECHECK, (FootSeen(Foot.LEFT_HIND, (healthy,)),))
    assert sightings(look(0, "DD"), clear, look(20, "DD")) == [([0], NEW), ([20], REPEATED)]


def test_two_looks_on_one_day_are_one_sighting():
    assert sightings(look(0, "SU"), look(0, "SU")) == [([0], NEW)]


def test_a_lesion_on_a_foot_that_was_never_lifted_before_is_told():
    old, fresh = cases_of(herd(look(0, "SU"), look(0, cow=2), look(200, "SU", cow=2)))
    assert (old.is_first_look, fresh.is_first_look) == (True, False)


def test_every_case_counts_once_in_the_days_in_which_it_began():
    cases = cases_of(herd(look(0, "SU"), look(93, "SU"), look(300, "SU"), look(0, "DD", cow=2)))
    assert [case.last for case in cases] == [day(93), day(0), day(300)]
    assert [case.first for case in new_cases_between(cases, day(0), day(300))] == [day(0), day(0)]
    assert [case.first for case in new_cases_between(cases, day(1), day(301))] == [day(300)]
    later = new_cases_between(cases, day(0), day(301), with_first_looks=False)
    assert [case.first for case in later] == [day(300)]


def test_in_any_history_each_sighting_is_in_one_case_and_no_case_goes_over_a_clear_look():
    chance = Random(4)
    for _ in range(200):
        seen_on = sorted(chance.sample(range(700), chance.randint(1, 12)))
        looks = [look(number, *chance.choice([(), ("SU",), ("DD",), ("SU", "DD")])) for number in seen_on]
        cases = cases_of(herd(*looks))
        for lesion, code in ((LesionCode.U, LesionCode.SU), (LesionCode.DD, LesionCode.DD)):
            days = sorted(d for case in cases if case.lesion is lesion for d in case.presentations)
            assert days == [seen.day for seen in looks if code in lesions_on(seen)]
            clear = [seen.day for seen in looks if code not in lesions_on(seen)]
            for case in (case for case in cases if case.lesion is lesion):
                assert not [d for d in clear if case.first < d < case.last]
                gaps = [(after - before).days for before, after in pairwise(case.presentations)]
                assert all(gap <= CaseRule().gap_of(lesion) for gap in gaps)


def test_a_business_may_call_a_lesion_chronic_sooner():
    looks = [look(0, "SU"), look(28, "SU")]
    assert sightings(*looks, rule=CaseRule(again_days=20, chronic_sightings=2)) == [([0, 28], CHRONIC)]


def test_the_kinds_are_written_in_words():
    assert [kind.label for kind in CaseKind] == ["New", "Repeated", "Chronic"]
