"""A herd's facts as the records tell them."""

from datetime import date, timedelta

import pytest

from farms.models import Calving, Cow
from farms.services.note_calving import note_calving
from farms.services.save_cow import save_cow
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    put_down,
    trimmed_foot,
    under_way,
)
from trimops.kernel.scope import Scope
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry
from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import BlockOn, Calved, LesionSeen
from visits.domain.lesions import LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.models import MobilityScore, MobilityScoring, Trim
from visits.selectors.herd_facts import herd_facts

SEEN_ON = date(2026, 3, 3)
TODAY = date(2026, 3, 20)


def facts_of(house, today=TODAY, scope=None):
    return herd_facts(scope or house.scope, house.farm, today)


def life_of(house, cow, today=TODAY):
    return facts_of(house, today).by_cow.get(cow.pk)


@pytest.fixture
def seen(house):
    """Cow 101 with an ulcer and a block on one hind foot, the other trimmed plainly."""
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot(), trimmed_foot(Foot.RIGHT_HIND))
    return visit


def test_a_cow_at_the_crush_is_told_with_her_feet_and_what_was_seen_on_them(house, seen):
    (cow,) = facts_of(house).seen
    assert (cow.cow, cow.day, cow.visit) == (house.cow.pk, SEEN_ON, seen.pk)
    assert (cow.reason, cow.is_lame) == (VisitReason.ROUTINE, None)
    left, right = cow.feet
    assert left.lesions == (LesionSeen(LesionCode.SU, Claw.LATERAL, zone=4, severity=2),)
    assert (left.foot, left.treated) == (Foot.LEFT_HIND, True)
    assert (right.foot, right.lesions, right.treated) == (Foot.RIGHT_HIND, (), False)


def test_relief_without_a_lesion_is_a_treatment_and_a_block_taken_off_is_none(house):
    visit = under_way(house.farm, house.van)
    relief = ActionEntry(ActionKind.RELIEF, Claw.LATERAL)
    off = ActionEntry(ActionKind.BLOCK_OFF, Claw.MEDIAL)
    put_down(visit, house.cow, trimmed_foot(Foot.LEFT_HIND, relief), trimmed_foot(Foot.RIGHT_HIND, off))
    assert [foot.treated for foot in facts_of(house).seen[0].feet] == [True, False]


@pytest.mark.parametrize(("score", "is_lame"), [(1, False), (2, True)])
def test_a_scored_cow_is_told_lame_or_not_on_her_own_scale(house, score, is_lame):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, trimmed_foot(), mobility_scale=MobilityScale.UK, mobility_score=score)
    assert facts_of(house).seen[0].is_lame is is_lame


def test_the_block_and_the_recheck_are_told_with_their_days(house, seen):
    facts = facts_of(house)
    assert facts.blocks == (
        BlockOn(
            house.cow.pk, Foot.LEFT_HIND, Claw.MEDIAL, BlockKind.WOOD, SEEN_ON, facts.blocks[0].off_due, None
        ),
    )
    (told,) = facts.rechecks
    assert (told.cow, told.foot, told.booked_on) == (house.cow.pk, Foot.LEFT_HIND, SEEN_ON)
    assert (told.looked_on, told.closed_on) == (None, None)


def test_a_foot_looked_at_again_closes_its_recheck_and_the_block_is_off_but_not_before_that_day(house, seen):
    finish(seen, house.trimmer)
    later = TUESDAY_TEN + timedelta(days=28)
    visit = under_way(house.farm, house.van, later, reason=VisitReason.RECHECK)
    put_down(visit, house.cow, trimmed_foot(Foot.LEFT_HIND, ActionEntry(ActionKind.BLOCK_OFF, Claw.MEDIAL)))
    after = facts_of(house, later.date())
    assert after.blocks[0].off_on == after.rechecks[0].looked_on == later.date()
    before = facts_of(house)
    assert (len(before.seen), before.blocks[0].off_on, before.rechecks[0].closed_on) == (1, None, None)


def test_a_cow_taken_back_was_not_seen(house, seen):
    Trim.objects.within(house.scope).update(taken_back_at=NOON)
    assert facts_of(house).seen == ()


def test_a_life_begins_with_the_first_calving_the_first_look_or_the_list_whichever_is_earliest(house, seen):
    assert life_of(house, house.cow).first_day == SEEN_ON
    note_calving(cow=house.cow, calved_on=date(2025, 1, 5), lactation=2)
    note_calving(cow=house.cow, calved_on=date(2026, 1, 20), lactation=3)
    life = life_of(house, house.cow)
    assert life.calvings == (Calved(date(2025, 1, 5), 2), Calved(date(2026, 1, 20), 3))
    assert (life.first_day, life.left_on) == (date(2025, 1, 5), None)
    listed = make_cow(house.farm, "102", entered_on=date(2024, 6, 1), calved_on=date(2025, 1, 5))
    assert life_of(house, listed).first_day == date(2024, 6, 1)


def test_a_calving_to_come_is_none(house, seen):
    note_calving(cow=house.cow, calved_on=TODAY + timedelta(days=1))
    assert life_of(house, house.cow).calvings == ()


def test_a_heifer_counts_from_her_first_calf_on_and_not_before(house):
    heifer = make_cow(house.farm, "201", status="heifer", entered_on=date(2025, 1, 1))
    assert life_of(house, heifer) is None
    heifer.status, heifer.calved_on = "milking", date(2026, 2, 1)
    save_cow(cow=heifer, lactation=1)
    assert life_of(house, heifer).first_day == date(2026, 2, 1)


def test_a_cow_of_which_nothing_else_is_known_is_there_today(house):
    assert life_of(house, house.cow).first_day == TODAY


def test_a_sold_cow_left_on_her_day_or_after_she_was_last_surely_there(house, seen):
    Cow.objects.within(house.scope).filter(pk=house.cow.pk).update(status="sold")
    assert life_of(house, house.cow).left_on == SEEN_ON + timedelta(days=1)
    told = make_cow(house.farm, "102", status="dead", calved_on=date(2025, 1, 5), left_on=date(2025, 8, 1))
    assert life_of(house, told).left_on == date(2025, 8, 1)
    assert not life_of(house, told).is_there(TODAY)


def test_a_bull_is_no_cow_of_the_herd(house, seen):
    Cow.objects.within(house.scope).filter(pk=house.cow.pk).update(status="bull")
    facts = facts_of(house)
    assert (facts.cows, facts.seen, facts.blocks, facts.rechecks) == ((), (), (), ())


def test_a_round_of_scores_is_told_with_its_scale(house):
    scoring = MobilityScoring.objects.create(
        business=house.business,
        farm=house.farm,
        scored_on=SEEN_ON,
        scale=MobilityScale.UK,
        whole_herd=True,
        noted_at=NOON,
        noted_by=house.owner,
    )
    for number, score in enumerate((0, 2)):
        MobilityScore.objects.create(
            business=house.business, scoring=scoring, cow=make_cow(house.farm, f"{number}"), score=score
        )
    (told,) = facts_of(house).scorings
    assert (told.day, told.scale, told.scores, told.whole_herd) == (SEEN_ON, MobilityScale.UK, (0, 2), True)
    assert facts_of(house, SEEN_ON - timedelta(days=1)).scorings == ()


def test_a_farm_client_reads_the_same_of_the_own_farm_and_nothing_of_another(house, seen):
    own = Scope(house.business.pk, house.farm.pk)
    assert facts_of(house, scope=own) == facts_of(house)
    far = Scope(house.business.pk, make_farm(house.business, "High Croft", by=house.owner).pk)
    assert (facts_of(house, scope=far).seen, facts_of(house, scope=far).cows) == ((), ())


def test_six_queries_read_a_herd_of_any_size(house, seen, django_assert_num_queries):
    for number in range(8):
        cow = make_cow(house.farm, f"{300 + number}", calved_on=date(2026, 1, 5))
        put_down(seen, cow, blocked_foot(), blocked_foot(Foot.RIGHT_HIND))
    with django_assert_num_queries(6):
        assert len(facts_of(house).seen) == 9
    assert Calving.objects.within(house.scope).count() == 8
