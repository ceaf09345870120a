"""Entries of cows by chance, right and wrong ones alike: for what must hold of each."""

from hypothesis import strategies as st

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import SIGNS, ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale


def words(longest):
    """Text as a trimmer may type it; no signs that are no text."""
    signs = st.characters(exclude_categories=["Cs", "Cc"], include_characters="\n\t")
    return st.text(signs, max_size=longest)


FINDINGS = st.builds(
    FindingEntry,
    lesion=st.sampled_from(LesionCode),
    claw=st.sampled_from(Claw),
    zone=st.none() | st.integers(0, 12),
    severity=st.integers(1, 3),
    dd_stage=st.none() | st.sampled_from(DDStage),
)
ACTIONS = st.builds(
    ActionEntry,
    kind=st.sampled_from(ActionKind),
    claw=st.none() | st.sampled_from(Claw),
    block_kind=st.none() | st.sampled_from(BlockKind),
)
FEET = st.builds(
    FootEntry,
    foot=st.sampled_from(Foot),
    wall_mm=st.none() | st.integers(0, 500),
    wall_measured_from=words(40),
    toe_angle=st.none() | st.integers(0, 180),
    look_again_days=st.none() | st.integers(0, 365),
    for_vet=words(200),
    findings=st.lists(FINDINGS, max_size=3).map(tuple),
    actions=st.lists(ACTIONS, max_size=4).map(tuple),
    **{sign: st.booleans() for sign in SIGNS},
)
COWS = st.builds(
    CowEntry,
    feet=st.lists(FEET, max_size=4, unique_by=lambda foot: foot.foot).map(tuple),
    mobility_scale=st.none() | st.sampled_from(MobilityScale),
    mobility_score=st.none() | st.integers(0, 5),
    belly_band_minutes=st.none() | st.integers(0, 600),
    crush_seconds=st.none() | st.integers(0, 86_400),
    note=words(300),
    for_vet=words(200),
)
