"""A short mark of a plan document: which jobs it does where and when. Two plans that differ in that have two marks."""

import hashlib
import json
from collections.abc import Mapping, Sequence


def plan_mark(plan: Mapping[str, object]) -> str:
    """Sixteen hexadecimal digits; costs, seconds and notes play no part."""
    shifts = [
        [str(shift["id"]), [[str(stop["job"]), str(stop["start"])] for stop in _parts(shift["stops"])]]
        for shift in _parts(plan["shifts"])
    ]
    out = sorted(str(each["job"]) for each in _parts(plan["left_out"]))
    return hashlib.sha256(json.dumps([shifts, out]).encode()).hexdigest()[:16]


def _parts(value: object) -> Sequence[Mapping[str, object]]:
    return [part for part in value if isinstance(part, dict)] if isinstance(value, list) else []
