"""Entries of a cow as a phone might make them, sound and odd, and how they go over the wire."""

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date, timedelta
from enum import Enum
from itertools import product

from hypothesis import strategies as st

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import SIGNS, ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.recheck_due import StandingBlock
from visits.domain.trim_figures import TrimFigures

WORDS = st.sampled_from(["", "", "", "told the son", "Ask about the “other” leg: 2 < 3 & hot"])
LANDMARKS = st.sampled_from(["", "", TrimFigures().wall_measured_from, "the hair line"])
DAYS = st.dates(date(2024, 2, 20), date(2028, 3, 5))

# One draw for each finding and action: all there are, sound and odd, in one list. Thousands are to be made in seconds.
PLACES = [None, *range(14)]
STAGES = [None, None, *DDStage]
SEEN = [*product(LesionCode, Claw, STAGES)]
HOW_BAD = [*product(PLACES, [1, 1, 2, 2, 3, 3, 0, 4])]
DONE = [ActionEntry(*chosen) for chosen in product(ActionKind, [None, *Claw], [None, *BlockKind])]
TRIMMED = [
    ActionEntry(step, Claw.MEDIAL) for step in (ActionKind.LENGTH, ActionKind.BALANCE, ActionKind.MODEL)
]
MEASURES = [*product([None, None, *range(68, 90), 74, 75, 76], [None, None, *range(40, 61)])]


def _finding(seen: tuple[LesionCode, Claw, DDStage | None], how: tuple[int | None, int]) -> FindingEntry:
    (lesion, claw, stage), (zone, severity) = seen, how
    return FindingEntry(lesion, claw, zone, severity, stage)


def _foot(measures: tuple[int | None, int | None], signs: int, **rest: object) -> FootEntry:
    wall, angle = measures
    looked_for = {sign: bool(signs >> place & 1) for place, sign in enumerate(SIGNS)}
    return FootEntry(wall_mm=wall, toe_angle=angle, **looked_for, **rest)


def _after_a_trim(more: list[ActionEntry]) -> tuple[ActionEntry, ...]:
    return (*TRIMMED, *more)


findings = st.builds(_finding, st.sampled_from(SEEN), st.sampled_from(HOW_BAD))
actions = st.sampled_from(DONE)
feet = st.builds(
    _foot,
    measures=st.sampled_from(MEASURES),
    signs=st.just(0) | st.sampled_from([1 << place for place in range(len(SIGNS))]) | st.integers(0, 255),
    foot=st.sampled_from(Foot),
    wall_measured_from=LANDMARKS,
    look_again_days=st.sampled_from([None, None, None, 0, 1, 14, 28, 400]),
    for_vet=WORDS,
    findings=st.lists(findings, max_size=4).map(tuple),
    actions=st.lists(actions, max_size=6).map(tuple) | st.lists(actions, max_size=2).map(_after_a_trim),
)
entries = st.builds(
    CowEntry,
    feet=(st.lists(feet, max_size=4) | st.lists(feet, max_size=1)).map(tuple),
    mobility_scale=st.sampled_from([None, *MobilityScale]),
    mobility_score=st.sampled_from([None, *range(7), 3, 4]),
    belly_band_minutes=st.sampled_from([None, 0, 5, 14, 15, 16, 30, 31]),
    crush_seconds=st.sampled_from([None, 0, 400]),
    note=WORDS,
    for_vet=WORDS,
)


def standing_on(day: date) -> st.SearchStrategy[list[StandingBlock]]:
    """Blocks of this cow from before, some of them long overdue."""
    block = st.builds(
        StandingBlock,
        foot=st.sampled_from(Foot),
        claw=st.sampled_from([Claw.LATERAL, Claw.MEDIAL]),
        kind=st.sampled_from(BlockKind),
        put_on=st.integers(0, 90).map(lambda days: day - timedelta(days=days)),
    )
    return st.lists(block, max_size=3)


WORDED = ("mobility_scale", "claw", "dd_stage", "block_kind")


def on_wire(value: object) -> object:
    """The value in wire shape: by field name; a word that was not chosen is "", a number null."""
    if is_dataclass(value):
        shape = {item.name: on_wire(getattr(value, item.name)) for item in fields(value)}
        shape |= {name: "" for name in WORDED if name in shape and shape[name] is None}
        return {**shape, "zone_map": "ILC"} if isinstance(value, FindingEntry) else shape
    if isinstance(value, Mapping):
        return {on_wire(key): on_wire(item) for key, item in value.items()}
    if isinstance(value, tuple | list):
        return [on_wire(item) for item in value]
    if isinstance(value, date):
        return value.isoformat()
    return value.value if isinstance(value, Enum) else value
