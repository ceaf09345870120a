"""A day at the crush made up by hand for the bench's own modules: papers, and what shows of the cows."""

from typing import Any

from visits.domain.crush_catalogue import crush_catalogue

DAY = "2026-11-25"
SIGNS = (
    *("has_pain", "has_swelling", "swelling_above_dewclaw", "has_bad_smell", "drew_blood"),
    *("sensitive_tissue", "deep_infection", "no_better_at_recheck"),
)
OLD_BLOCK = {"foot": "RH", "claw": "medial", "kind": "wood", "put_on": "2026-10-20", "off_due": "2026-11-17"}


def paper_cow(key: int, number: str, **changes: object) -> dict[str, object]:
    return {"id": key, "number": number, "why": [], "blocks": [], "rechecks": [], **changes}


def papers(**changes: object) -> dict[str, Any]:
    """Four cows, of which three are on the list; wooden blocks come off after 21 to 28 days."""
    trim = {"shortest_wall_mm": 70, "toe_angle_from": 45, "toe_angle_to": 55, "feet_lifted": 4}
    rechecks = {
        "block": {"wood": [21, 28], "eva": [10, 14]},
        "lesion": {"SU": [21, 28]},
        "lame_trim": [10, 14],
    }
    return {
        **crush_catalogue(),
        "visit": {"id": 7, "day": DAY, "zone": "Europe/London"},
        "cows": [
            paper_cow(1, "412"),
            paper_cow(2, "96", blocks=[OLD_BLOCK]),
            paper_cow(3, "318"),
            paper_cow(4, "55"),
        ],
        "queue": [1, 2, 3],
        "figures": {"trim": trim, "rechecks": rechecks},
        "consumables": [
            consumable(1, "Wooden block", use("block", 1, "wood"), in_van=3),
            consumable(2, "Glue", use("block", 12.5), unit="ml", in_van=100),
            consumable(3, "Wrap", use("wrap", 1), kind="wrap", in_van=None),
        ],
        **changes,
    }


def consumable(key: int, name: str, *uses: dict[str, object], **changes: object) -> dict[str, object]:
    return {"id": key, "name": name, "kind": "block", "unit": "each", "uses": uses, "in_van": 0, **changes}


def use(per: str, quantity: float, block_kind: str = "") -> dict[str, object]:
    """A line of a recipe."""
    return {"per": per, "block_kind": block_kind, "quantity": quantity}


def did(kind: str, claw: str = "", block_kind: str = "") -> dict[str, str]:
    return {"kind": kind, "claw": claw, "block_kind": block_kind}


def foot(name: str, *actions: dict[str, str], **changes: object) -> dict[str, object]:
    measures = {"wall_mm": None, "wall_measured_from": "", "toe_angle": None, "look_again_days": None}
    return {
        "foot": name,
        **measures,
        "for_vet": "",
        **dict.fromkeys(SIGNS, False),
        "findings": [],
        "actions": list(actions),
        **changes,
    }


def cow(key: int | str, *feet: dict[str, object], **changes: object) -> dict[str, Any]:
    """What shows of a cow: known by her key, or added under her number."""
    is_known = isinstance(key, int)
    who = {"id": key} if is_known else {"new": {"uid": f"u{key}", "number": key, "is_another": False}}
    entry = {"mobility_scale": "", "mobility_score": None, "note": "", "for_vet": "", "feet": list(feet)}
    told = changes.pop("told_vet", "")
    return {
        "kind": "cow",
        "uid": f"w{key}",
        "cowKey": f"c{key}" if is_known else f"nu{key}",
        "made_at": f"{DAY}T10:00:00Z",
        "placed_at": None,
        "state": "waiting",
        "content": {"cow": who, "told_vet": told, "entry": {**entry, **changes}},
    }


def kit(item: int, extra: str, at: str = "11:00", uid: str = "k") -> dict[str, Any]:
    content = {"consumable": item, "extra": extra}
    moment = f"{DAY}T{at}:00Z"
    return {
        "kind": "kit",
        "uid": uid,
        "made_at": moment,
        "placed_at": None,
        "state": "waiting",
        "content": content,
    }


def shown(*writings: dict[str, Any]) -> list[list[object]]:
    """As the phone's map of what shows: by cow or by thing."""
    return [[one.get("cowKey") or one["uid"], one] for one in writings]
