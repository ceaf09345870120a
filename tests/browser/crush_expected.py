"""What must stand on the server for a cow, in wire shape, reckoned from what was meant to be tapped and nothing else.

Written down here a second time on purpose: the page's own modules are not asked. `crush_seconds` is left out (the
hand brackets it by the clock), and the order of findings and of actions on a foot says nothing.
"""

from decimal import Decimal

from tests.browser.crush_plans import ALL_FOUR, HIND_FEET, NONE, CowPlan, FootPlan, Seen

FEET = {ALL_FOUR: ("LH", "RH", "LF", "RF"), HIND_FEET: ("LH", "RH"), NONE: ()}
CLAWS = ("lateral", "medial")
PARTNER = {"lateral": "medial", "medial": "lateral"}
STEPS = ("length", "balance", "model")
SIGNS = (
    *("has_pain", "has_swelling", "swelling_above_dewclaw", "has_bad_smell"),
    *("drew_blood", "sensitive_tissue", "deep_infection", "no_better_at_recheck"),
)
ALWAYS_PAINFUL = ("SU", "WLA", "TU")  # of those that the mix has
OF_THE_HORN = ("SU", "WLA", "WL", "TU", "SH")
LANDMARK = "where the horn turns hard"


def content_of(plan: CowPlan) -> dict[str, object]:
    """The content of the writing, without `cow`."""
    planned = {foot.foot: foot for foot in plan.feet}
    lifted = [*FEET[plan.plain], *(foot for foot in planned if foot not in FEET[plan.plain])]
    feet = [_foot(planned.get(name) or FootPlan(name), plan) for name in lifted]
    if plan.is_uncut:
        feet = [_with(_empty(name), [_action("no_cut", claw) for claw in CLAWS]) for name in FEET[ALL_FOUR]]
    entry = {
        "mobility_scale": "" if plan.score is None else "UK0-3",
        "mobility_score": plan.score,
        "belly_band_minutes": 1 if plan.has_band else None,
        "note": plan.note,
        "for_vet": plan.for_vet,
        "feet": feet,
    }
    return in_order({"told_vet": plan.told, "entry": entry})


def in_order(content: dict) -> dict:
    """The same with feet, findings and actions sorted, and without how long she stood."""
    entry = {key: value for key, value in content["entry"].items() if key != "crush_seconds"}
    entry["feet"] = sorted((_foot_in_order(foot) for foot in entry["feet"]), key=lambda foot: foot["foot"])
    return {"told_vet": content["told_vet"], "entry": entry}


def used_of(plan: CowPlan) -> dict[str, Decimal]:
    """Kit by its name in the yard; 25 ml of glue with each block."""
    gone = [item for foot in plan.feet for item in foot.goes_on]
    blocks = sum(item.startswith("block") for item in gone)
    used = {
        "wood": blocks,
        "glue": 25 * blocks,
        "wrap": gone.count("wrap"),
        "dressing": gone.count("dressing"),
    }
    return {name: Decimal(number) for name, number in used.items() if number}


def _foot(plan: FootPlan, cow: CowPlan) -> dict[str, object]:
    findings = [_finding(seen) for seen in plan.seen]
    sore = {each["claw"] for each in findings if _hurts(each)}
    # With sensitive tissue open nothing is taken for done.
    is_cut = "sensitive_tissue" not in plan.signs
    cuts = (*((kind, claw) for claw in CLAWS for kind in STEPS),)
    relief = tuple((kind, claw) for claw in sorted(sore) for kind in ("relief", "loose_horn"))
    actions = [_action(kind, claw) for kind, claw in (*cuts, *relief) if is_cut]
    if plan.block_off:
        actions.append(_action("block_off", plan.block_off))
    actions += [_gone_on(item, sore) for item in plan.goes_on]
    foot = _with(_empty(plan.foot), actions) | {"findings": findings, "look_again_days": plan.look_again}
    foot |= {"toe_angle": plan.toe_angle, "for_vet": plan.for_vet} | dict.fromkeys(plan.signs, True)
    wall = {"wall_mm": plan.wall_mm, "wall_measured_from": LANDMARK} if plan.wall_mm else {}
    return foot | wall


def _hurts(finding: dict) -> bool:
    is_painful = finding["lesion"] in ALWAYS_PAINFUL or finding["severity"] >= 2
    return finding["lesion"] in OF_THE_HORN and is_painful


def _gone_on(item: str, sore: set[str]) -> dict[str, object]:
    kind, _, block_kind = item.partition(" ")
    claw = PARTNER[next(iter(sore))] if kind == "block" else ""
    return _action(kind, claw, block_kind)


def _finding(seen: Seen) -> dict[str, object]:
    usual = 2 if seen.lesion in ALWAYS_PAINFUL else 1
    place = {"lesion": seen.lesion, "claw": seen.claw, "zone": seen.zone, "zone_map": "ILC"}
    return {**place, "severity": seen.severity or usual, "dd_stage": seen.stage}


def _action(kind: str, claw: str = "", block_kind: str = "") -> dict[str, object]:
    return {"kind": kind, "claw": claw, "block_kind": block_kind}


def _empty(name: str) -> dict[str, object]:
    measures = {"wall_mm": None, "wall_measured_from": "", "toe_angle": None, "look_again_days": None}
    return {
        "foot": name,
        **measures,
        "for_vet": "",
        **dict.fromkeys(SIGNS, False),
        "findings": [],
        "actions": [],
    }


def _with(foot: dict, actions: list) -> dict:
    return {**foot, "actions": actions}


def _foot_in_order(foot: dict) -> dict:
    rows = {
        name: sorted(foot[name], key=lambda row: sorted(map(str, row.items())))
        for name in ("findings", "actions")
    }
    return {**foot, **rows}
