"""Cows that a trimmer may put down, each with what must follow from it, said here by hand."""

from dataclasses import dataclass, field
from decimal import Decimal

SIGNS = (
    *("has_pain", "has_swelling", "swelling_above_dewclaw", "has_bad_smell"),
    *("drew_blood", "sensitive_tissue", "deep_infection", "no_better_at_recheck"),
)


def whole_foot(name, findings=(), actions=(), **fields):
    """A foot with every key, as the phone writes it."""
    return {
        "foot": name,
        "wall_mm": None,
        "wall_measured_from": "",
        "toe_angle": None,
        "look_again_days": None,
        "for_vet": "",
        **dict.fromkeys(SIGNS, False),
        "findings": list(findings),
        "actions": list(actions),
        **fields,
    }


def whole_entry(*feet, **fields):
    return {
        "mobility_scale": "",
        "mobility_score": None,
        "belly_band_minutes": None,
        "crush_seconds": None,
        "note": "",
        "for_vet": "",
        "feet": list(feet),
        **fields,
    }


def did(kind, claw="", block_kind=""):
    return {"kind": kind, "claw": claw, "block_kind": block_kind}


def saw(lesion, claw, zone=None, severity=1, dd_stage=""):
    return {
        "lesion": lesion,
        "claw": claw,
        "zone": zone,
        "zone_map": "ILC",
        "severity": severity,
        "dd_stage": dd_stage,
    }


ULCER_LH = whole_foot(
    "LH",
    [saw("SU", "lateral", 4, 2)],
    [did("relief", "lateral"), did("block", "medial", "wood"), did("wrap")],
    wall_mm=75,
)
BLOCK_RH = whole_foot("RH", [], [did("length", "medial"), did("block", "lateral", "wood")])
PLAIN_LH = whole_foot("LH", [], [did("length", "medial"), did("balance", "lateral")])
SORE_RF = whole_foot("RF", [saw("DD", "skin", 10, 2, "M2")], [did("wrap")], for_vet="would not bear weight")


@dataclass(frozen=True)
class Dish:
    """An entry; the feet that must then be looked at again; blocks that stand; blocks and wraps used; referrals."""

    entry: dict
    rechecks: frozenset = frozenset()
    blocks: frozenset = frozenset()
    used: dict = field(default_factory=dict)
    referrals: int = 0


MENU = (
    Dish(whole_entry(note="nothing found")),
    Dish(whole_entry(PLAIN_LH, mobility_scale="UK0-3", mobility_score=1, crush_seconds=240)),
    Dish(
        whole_entry(ULCER_LH, belly_band_minutes=4),
        rechecks=frozenset({"LH"}),
        blocks=frozenset({("LH", "medial", "wood")}),
        used={"wood": Decimal(1), "wrap": Decimal(1)},
    ),
    Dish(
        whole_entry(ULCER_LH, BLOCK_RH),
        rechecks=frozenset({"LH", "RH"}),
        blocks=frozenset({("LH", "medial", "wood"), ("RH", "lateral", "wood")}),
        used={"wood": Decimal(2), "wrap": Decimal(1)},
    ),
    Dish(
        whole_entry(SORE_RF, for_vet="thin and dull"),
        rechecks=frozenset({"RF"}),
        used={"wrap": Decimal(1)},
        referrals=2,
    ),
    Dish(whole_entry({**PLAIN_LH, "look_again_days": 9}), rechecks=frozenset({"LH"})),
    Dish(whole_entry({**SORE_RF, "look_again_days": 0, "for_vet": ""}), used={"wrap": Decimal(1)}),
)


@dataclass(frozen=True)
class Tub:
    """What was mixed, and what that takes of the stock."""

    product: str | None
    dilution: str
    litres: str | None
    used: Decimal | None = None


TUBS = (
    Tub(None, "1:100", None),
    Tub("liquid", "1:100", "10", Decimal(100)),
    Tub("liquid", "2 % v/v", "2.5", Decimal(50)),
    Tub("powder", "2 % w/v", "10", Decimal(200)),
    Tub("powder", "10 ml/l", "1", Decimal("8.33")),  # a ml of it weighs 0.833 g
    Tub("liquid", "a good glug", "10"),
    Tub("liquid", "1:100", None),
)

ON_THE_SORE_CLAW = whole_entry(
    whole_foot("LH", [saw("SU", "lateral", 4, 2)], [did("block", "lateral", "wood")])
)
# (what is wrong with it, the fields that the answer must name)
BAD_CONTENT = (
    ({"entry": ON_THE_SORE_CLAW}, {"content.entry.feet[0].actions[0].claw"}),
    (
        {"entry": whole_entry(whole_foot("LH", [saw("SU", "lateral", 13)]))},
        {"content.entry.feet[0].findings[0].zone"},
    ),
    ({"entry": whole_entry(whole_foot("XX"))}, {"content.entry.feet[0].foot"}),
    ({"entry": {**whole_entry(), "colour": "red"}}, {"content.entry.colour"}),
    ({"entry": whole_entry(note="x" * 301)}, {"content.entry.note"}),
    ({"entry": whole_entry(note="\x00")}, {"content.entry.note"}),
    ({"entry": whole_entry(belly_band_minutes="4")}, {"content.entry.belly_band_minutes"}),
    ({"entry": whole_entry(mobility_score=2)}, {"content.entry.mobility_scale"}),
    ({"entry": []}, {"content.entry"}),
    ({"cow": {"id": 987_654_321}}, {"content.cow.id"}),
    ({"cow": {}}, {"content.cow"}),
)
