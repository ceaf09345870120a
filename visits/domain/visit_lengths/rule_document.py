"""A learned rule as plain values that go into JSON, and back."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict

from visits.domain.visit_lengths.learned_rule import FarmLearned, LearnedRule
from visits.domain.visit_lengths.length_parts import PARTS, Vans
from visits.domain.visit_lengths.mixed_rows import GroupPart
from visits.domain.visit_lengths.spread_shape import SpreadShape
from visits.domain.visit_lengths.variance_steps import Variances
from visits.domain.visit_lengths.work_shares import FarmShares, NamedShares, WorkShares

FORMAT = "trimops-visit-lengths/1"


class NotALearnedRule(ValueError):
    """The document was written by another version, or is none."""


def rule_document(rule: LearnedRule) -> dict[str, object]:
    """Everything of the rule; numbers keep seven digits."""
    shares = rule.shares
    return {
        "format": FORMAT,
        "parts": list(PARTS),
        "vans": list(rule.vans.keys),
        "mean": _short(rule.mean),
        "covariance": [_short(row) for row in rule.covariance],
        "groups": _short(rule.variances.groups),
        "noise": _short([rule.variances.scale, rule.variances.growth]),
        "shares": _short([shares.turn_out, shares.rest_corrective, shares.rest_check, shares.blocks]),
        "named": {name: _digits(value) for name, value in asdict(shares.named).items()},
        "farms": {str(farm): _farm(learned, shares.rest_at(farm)) for farm, learned in rule.farms.items()},
        "visits": rule.visits,
        "shape": list(rule.shape.errors),
        "day_share": _digits(rule.day_share),
    }


def rule_of_document(document: Mapping[str, object]) -> LearnedRule:
    """The rule again. NotALearnedRule where the document is of another form or other parts."""
    if document.get("format") != FORMAT or document.get("parts") != list(PARTS):
        raise NotALearnedRule("not a document of learned lengths of this version")
    farms = _map(document["farms"])
    return LearnedRule(
        vans=Vans(tuple(int(key) for key in _numbers(document["vans"]))),
        mean=_numbers(document["mean"]),
        covariance=_table(document["covariance"]),
        variances=_variances(document),
        shares=_shares(document, farms),
        farms={int(farm): _farm_learned(_map(item)) for farm, item in farms.items()},
        visits=int(_number(document["visits"])),
        shape=SpreadShape(tuple(_numbers(document["shape"]))),
        day_share=_number(document["day_share"]),
    )


def _farm(learned: FarmLearned, rest_corrective: float) -> dict[str, object]:
    part = learned.part
    return {
        "visits": learned.visits,
        "mean": _short(part.mean),
        "covariance": [_short(row) for row in part.covariance],
        "cross": [_short(row) for row in part.cross],
        "rest_corrective": _digits(rest_corrective),
    }


def _farm_learned(item: Mapping[str, object]) -> FarmLearned:
    part = GroupPart(_numbers(item["mean"]), _table(item["covariance"]), _table(item["cross"]))
    return FarmLearned(int(_number(item["visits"])), part)


def _variances(document: Mapping[str, object]) -> Variances:
    scale, growth = _numbers(document["noise"])
    return Variances(tuple(_numbers(document["groups"])), scale, growth)


def _shares(document: Mapping[str, object], farms: Mapping[str, object]) -> WorkShares:
    turn_out, rest_corrective, rest_check, blocks = _numbers(document["shares"])
    named = _map(document["named"])
    return WorkShares(
        turn_out=turn_out,
        named=NamedShares(_number(named["corrective"]), _number(named["check"])),
        rest_corrective=rest_corrective,
        rest_check=rest_check,
        blocks=blocks,
        farms={int(farm): FarmShares(_number(_map(item)["rest_corrective"])) for farm, item in farms.items()},
    )


def _short(values: Sequence[float]) -> list[float]:
    return [_digits(value) for value in values]


def _digits(value: float) -> float:
    return float(f"{value:.7g}")


def _number(value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise NotALearnedRule(f"a number is missing: {value!r}")
    return float(value)


def _numbers(values: object) -> list[float]:
    if not isinstance(values, list):
        raise NotALearnedRule("numbers are missing")
    return [_number(value) for value in values]


def _table(rows: object) -> list[list[float]]:
    if not isinstance(rows, list):
        raise NotALearnedRule("a table is missing")
    return [_numbers(row) for row in rows]


def _map(value: object) -> Mapping[str, object]:
    if not isinstance(value, dict):
        raise NotALearnedRule("a part is missing")
    return value
