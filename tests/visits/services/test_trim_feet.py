"""The feet of a trim as rows."""

from tests.factories import NOON, blocked_foot, put_down, trimmed_foot
from visits.domain.crush_entry import CowEntry, FindingEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.models import ClawAction, Finding, TrimmedFoot
from visits.services.stored_cow import StoredCow
from visits.services.trim_feet import SIGNS, store_feet


def test_measures_and_signs_of_a_foot_are_kept(house, visit):
    foot = trimmed_foot(
        Foot.RIGHT_FORE, wall_mm=78, wall_measured_from="coronet", toe_angle=48, **dict.fromkeys(SIGNS, True)
    )
    put_down(visit, house.cow, foot)
    row = TrimmedFoot.objects.within(house.scope).get()
    assert (row.foot, row.wall_mm, row.wall_measured_from, row.toe_angle) == ("RF", 78, "coronet", 48)
    assert all(getattr(row, sign) for sign in SIGNS)


def test_signs_that_were_not_seen_are_not_set(house, visit):
    put_down(visit, house.cow, trimmed_foot(has_pain=True))
    row = TrimmedFoot.objects.within(house.scope).get()
    assert [sign for sign in SIGNS if getattr(row, sign)] == ["has_pain"]


def test_findings_keep_place_stage_and_the_map_they_were_read_on(house, visit):
    finding = FindingEntry(LesionCode.DD, Claw.SKIN, zone=10, severity=3, dd_stage=DDStage.M2)
    put_down(visit, house.cow, trimmed_foot(findings=(finding,)))
    row = Finding.objects.within(house.scope).get()
    assert (row.lesion, row.claw, row.zone, row.severity, row.dd_stage) == ("DD", "skin", 10, 3, "M2")
    assert row.zone_map == "ILC"


def test_actions_keep_claw_and_kind_of_block_in_their_order(house, visit):
    put_down(visit, house.cow, blocked_foot())
    rows = ClawAction.objects.within(house.scope).order_by("pk")
    assert [(row.kind, row.claw, row.block_kind) for row in rows] == [
        ("length", "medial", ""),
        ("balance", "lateral", ""),
        ("block", "medial", "wood"),
    ]


def test_storing_replaces_the_feet_that_were_there(house, visit):
    trim = put_down(visit, house.cow, blocked_foot(), trimmed_foot(Foot.RIGHT_HIND))
    entry = CowEntry(feet=(trimmed_foot(Foot.LEFT_FORE),))
    store_feet([StoredCow(trim, entry, NOON.date(), NOON)])
    assert [row.foot for row in TrimmedFoot.objects.within(house.scope)] == ["LF"]
    assert not Finding.objects.within(house.scope).exists()


def test_a_cow_looked_at_without_a_foot_lifted_has_no_feet(house, visit):
    trim = put_down(visit, house.cow)
    assert trim.kind == "check"
    assert not TrimmedFoot.objects.within(house.scope).exists()
