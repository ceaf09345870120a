from datetime import date

import pytest

from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import CowSeen, FootSeen, LesionSeen
from visits.domain.herd.lesion_families import (
    LesionFamily,
    counts_as,
    has_any,
    is_lesion,
    lesion_family,
    lesions_on,
    lesions_on_foot,
    what_label,
)
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.visit_states import VisitReason

INFECTIOUS, CLAW_HORN, OTHER = LesionFamily
HEALTHY = LesionSeen(LesionCode.DD, Claw.SKIN, 10, dd_stage=DDStage.M0)
ULCER = LesionSeen(LesionCode.SU, Claw.LATERAL, 4)


@pytest.mark.parametrize(
    ("codes", "family"),
    [
        ("DD ID IP HHE", INFECTIOUS),
        ("DS HF HFA HFH HFV SH SHD SHC U SU BU TU TN TS WL WLF WLA", CLAW_HORN),
        ("AC CD CC SC IH SW", OTHER),
    ],
)
def test_every_lesion_of_the_atlas_has_its_family(codes, family):
    found = {code for code in LesionCode if lesion_family(code) is family}
    assert found == {LesionCode(code) for code in codes.split()}


def test_heel_horn_erosion_goes_where_the_business_counts_it_and_nothing_else_moves():
    moved = {code for code in LesionCode if lesion_family(code) is not lesion_family(code, CLAW_HORN)}
    assert moved == {LesionCode.HHE}
    assert counts_as(LesionCode.HHE, CLAW_HORN, heel_erosion=CLAW_HORN)


@pytest.mark.parametrize(
    ("code", "what", "counts"),
    [
        (LesionCode.SU, None, True),
        (LesionCode.SU, LesionCode.SU, True),
        (LesionCode.SU, LesionCode.U, True),
        (LesionCode.U, LesionCode.SU, False),
        (LesionCode.TU, LesionCode.SU, False),
        (LesionCode.WLA, LesionCode.WL, True),
        (LesionCode.SU, CLAW_HORN, True),
        (LesionCode.SU, INFECTIOUS, False),
    ],
)
def test_a_kind_of_a_lesion_counts_in_its_parent_and_not_the_other_way(code, what, counts):
    assert counts_as(code, what) is counts
    assert has_any([LesionCode.AC, code], what) is (counts or what is None)


def test_healthy_skin_noted_as_m0_is_no_lesion():
    foot = FootSeen(Foot.LEFT_HIND, (HEALTHY, ULCER))
    cow = CowSeen(1, date(2026, 3, 2), 1, VisitReason.ROUTINE, (foot, FootSeen(Foot.RIGHT_HIND, (HEALTHY,))))
    assert not is_lesion(HEALTHY)
    assert lesions_on_foot(foot) == (ULCER,)
    assert lesions_on(cow) == {LesionCode.SU}


def test_what_is_counted_has_words():
    assert [what_label(w) for w in (None, LesionCode.SU, INFECTIOUS)] == [
        "any lesion",
        "sole ulcer",
        "infectious lesions",
    ]
