"""One cow at the crush is noted."""

from datetime import timedelta
from uuid import uuid4

import pytest

from tests.factories import (
    NOON,
    blocked_foot,
    finish,
    in_state,
    make_cow,
    make_farm,
    make_house,
    make_kit,
    planned,
    put_down,
    trimmed_foot,
)
from trimops.tenancy.errors import MixedBusinesses
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitState
from visits.models import Block, CrushWriting, Recheck, Referral, StockMovement, Trim
from visits.services.record_trim import (
    CowOfAnotherFarm,
    CrushRecord,
    EntryContradicts,
    VisitNotUnderWay,
    record_trim,
)

ULCER = FindingEntry(LesionCode.SU, Claw.LATERAL, zone=4, severity=2)
EVERYTHING = (Trim, CrushWriting, Block, Recheck, Referral, StockMovement)


def rows_of(house):
    return {
        model.__name__: list(model.objects.within(house.scope).order_by("pk").values())
        for model in EVERYTHING
    }


def record_of(cow, *feet, at=NOON, client_id=None, **entry):
    return CrushRecord(cow, CowEntry(feet=feet, **entry), client_id or uuid4(), at)


def test_what_was_put_down_is_kept(house, visit):
    entry = {"mobility_scale": MobilityScale.UK, "mobility_score": 2, "belly_band_minutes": 4}
    trim = put_down(visit, house.cow, blocked_foot(), note="Quiet", **entry)
    stored = Trim.objects.within(house.scope).get(pk=trim.pk)
    assert (stored.visit, stored.cow, stored.kind, stored.version) == (visit, house.cow, "corrective", 1)
    assert (stored.mobility_scale, stored.mobility_score) == ("UK0-3", 2)
    assert (stored.belly_band_minutes, stored.note) == (4, "Quiet")
    assert stored.recorded_by == house.trimmer
    (block,) = Block.objects.within(house.scope)
    assert (block.foot, block.claw, block.kind, block.off_on) == ("LH", "medial", "wood", None)


def test_the_same_cow_sent_again_changes_nothing(house, visit):
    make_kit(house.business)
    record = record_of(house.cow, blocked_foot(sensitive_tissue=True))
    first = record_trim(visit=visit, record=record, by=house.trimmer)
    before = rows_of(house)
    assert record_trim(visit=visit, record=record, by=house.trimmer).pk == first.pk
    assert rows_of(house) == before


def test_mending_a_cow_keeps_what_was_said_before(house, visit):
    put_down(visit, house.cow, trimmed_foot(), note="First look")
    trim = put_down(
        visit, house.cow, blocked_foot(), note="Second look", at=NOON + timedelta(days=1, hours=1)
    )
    assert Trim.objects.within(house.scope).filter(visit=visit).count() == 1
    assert (trim.version, trim.kind) == (2, "corrective")
    first, second = CrushWriting.objects.within(house.scope).order_by("pk")
    assert [row.content["entry"]["note"] for row in (first, second)] == ["First look", "Second look"]
    assert (second.after, second.cow) == (first.uid, house.cow)


def test_mending_a_block_away_takes_back_block_and_recheck(house, visit):
    put_down(visit, house.cow, blocked_foot())
    put_down(visit, house.cow, trimmed_foot(), at=NOON + timedelta(days=1, hours=1))
    assert not Block.objects.within(house.scope).exists()
    assert not Recheck.objects.within(house.scope).exists()


def test_a_block_on_the_sore_claw_is_refused_with_the_reason_and_nothing_is_kept(house, visit):
    wrong = ActionEntry(ActionKind.BLOCK, Claw.LATERAL, BlockKind.WOOD)
    foot = FootEntry(Foot.LEFT_HIND, findings=(ULCER,), actions=(wrong,))
    with pytest.raises(EntryContradicts) as refused:
        put_down(visit, house.cow, foot)
    assert refused.value.message.startswith("Left hind: The block is on the sore outer claw.")
    assert all(rows == [] for rows in rows_of(house).values())


def test_every_fault_of_an_entry_is_told_at_once(house, visit):
    off_the_map = FootEntry(Foot.RIGHT_HIND, findings=(FindingEntry(LesionCode.SU, Claw.LATERAL, zone=13),))
    nameless = FootEntry(Foot.LEFT_HIND, actions=(ActionEntry(ActionKind.BLOCK, Claw.MEDIAL),))
    with pytest.raises(EntryContradicts) as refused:
        put_down(visit, house.cow, off_the_map, nameless)
    assert "Right hind: The map has zones 0 to 12, not 13." in refused.value.message
    assert "Left hind: Say which block went on" in refused.value.message


def test_a_refused_mending_leaves_the_earlier_words_as_they_were(house, visit):
    put_down(visit, house.cow, blocked_foot())
    before = rows_of(house)
    wrong = ActionEntry(ActionKind.BLOCK, Claw.LATERAL, BlockKind.WOOD)
    with pytest.raises(EntryContradicts):
        put_down(visit, house.cow, FootEntry(Foot.LEFT_HIND, findings=(ULCER,), actions=(wrong,)))
    assert rows_of(house) == before


def test_what_is_the_vets_is_referred_with_who_was_told(house, visit):
    record = CrushRecord(
        house.cow, CowEntry(feet=(trimmed_foot(drew_blood=True),)), uuid4(), NOON, told_vet="The practice"
    )
    record_trim(visit=visit, record=record, by=house.trimmer)
    (referral,) = Referral.objects.within(house.scope)
    assert (referral.foot, referral.told_whom, referral.told_at) == ("LH", "The practice", NOON)
    assert "blood" in referral.reason


def test_mending_the_entry_takes_a_referral_back(house, visit):
    put_down(visit, house.cow, trimmed_foot(drew_blood=True))
    put_down(visit, house.cow, trimmed_foot(), at=NOON + timedelta(days=1, hours=1))
    assert not Referral.objects.within(house.scope).exists()


def test_cows_are_put_down_only_while_the_visit_is_under_way(house):
    waiting = planned(house.farm, house.van)
    with pytest.raises(VisitNotUnderWay):
        put_down(waiting, house.cow, trimmed_foot())


def test_a_cow_may_come_late_after_the_finish(house, visit):
    finish(visit, house.trimmer)
    assert put_down(visit, house.cow, trimmed_foot()).kind == "functional"


def test_a_visit_called_off_takes_no_cow(house):
    gone = in_state(VisitState.CALLED_OFF, house.farm, house.van)
    with pytest.raises(VisitNotUnderWay):
        record_trim(visit=gone, record=record_of(house.cow, trimmed_foot()), by=house.trimmer)


def test_a_cow_of_another_farm_is_refused(house, visit):
    elsewhere = make_cow(make_farm(house.business, "High Croft", by=house.owner), "7")
    with pytest.raises(CowOfAnotherFarm, match="7"):
        put_down(visit, elsewhere, trimmed_foot())


def test_a_cow_of_another_business_is_out_of_reach(house, visit):
    with pytest.raises(MixedBusinesses):
        put_down(visit, make_house("Fell & Beck").cow, trimmed_foot())
