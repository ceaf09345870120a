"""What stands on the server, put into the shape of the wire, to be held against what was tapped.

Read from the rows that the office, the papers and the invoice use, not from the writings as they were sent.
"""

from collections import Counter
from decimal import Decimal

from django.db.models import Sum

from tests.browser.crush_expected import SIGNS, in_order
from tests.browser.crush_yard import Yard
from visits.models import ClawAction, CrushWriting, Finding, StockMovement, Trim, TrimmedFoot, TrimPhoto

MEASURES = ("wall_mm", "wall_measured_from", "toe_angle", "look_again_days", "for_vet")
COW = ("mobility_scale", "mobility_score", "belly_band_minutes", "crush_seconds", "note", "for_vet")
FINDING = ("lesion", "claw", "zone", "zone_map", "severity", "dd_stage")
ACTION = ("kind", "claw", "block_kind")


def trims_of(yard: Yard) -> dict[str, Trim]:
    """Every cow that stands on today's visit, by number; fails on two of one number."""
    rows = Trim.objects.within(yard.house.scope).filter(visit=yard.visit).select_related("cow")
    twice = [number for number, times in Counter(row.cow.number for row in rows).items() if times > 1]
    assert twice == [], "no cow stands twice"
    return {row.cow.number: row for row in rows}


def content_on_server(trim: Trim) -> dict[str, object]:
    """Her rows in wire shape, in the order of `in_order`."""
    feet = TrimmedFoot.objects.within(trim.scope).filter(trim=trim)
    entry = {name: getattr(trim, name) for name in COW} | {"feet": [_foot(foot) for foot in feet]}
    return in_order({"told_vet": trim.told_vet, "entry": entry})


def writings_of(yard: Yard, number: str) -> list[CrushWriting]:
    """Every version of a cow that ever came, oldest first."""
    rows = CrushWriting.objects.within(yard.house.scope).filter(visit=yard.visit, kind="cow")
    return list(rows.filter(cow__number=number).order_by("placed_at", "uid"))


def kit_used(trim: Trim) -> dict[str, Decimal]:
    """What the ledger says of her, by the consumable's name."""
    rows = StockMovement.objects.within(trim.scope).filter(trim=trim).order_by()
    used = rows.values_list("consumable__name").annotate(Sum("quantity"))
    return {name: -quantity for name, quantity in used if quantity}


def photos_of(yard: Yard) -> list[TrimPhoto]:
    return list(
        TrimPhoto.objects.within(yard.house.scope).filter(visit=yard.visit).select_related("trim__cow")
    )


def _foot(foot: TrimmedFoot) -> dict[str, object]:
    findings = Finding.objects.within(foot.scope).filter(trimmed_foot=foot).values(*FINDING)
    actions = ClawAction.objects.within(foot.scope).filter(trimmed_foot=foot).values(*ACTION)
    own = {name: getattr(foot, name) for name in ("foot", *MEASURES, *SIGNS)}
    return {**own, "findings": list(findings), "actions": list(actions)}
