"""What the server says of a visit, read from the tables as they are, in the words of the wire."""

from collections import Counter, defaultdict
from decimal import Decimal

from tests.visits.api.crush_menu import SIGNS
from visits.models import (
    AddedCow,
    Block,
    ClawAction,
    CrushWriting,
    Finding,
    Recheck,
    Referral,
    StockCount,
    StockMovement,
    Trim,
    TrimmedFoot,
    TrimPhoto,
    WashDown,
)

COW = (*("mobility_scale", "mobility_score", "belly_band_minutes", "crush_seconds", "note", "for_vet"),)
FOOT = ("foot", "wall_mm", "wall_measured_from", "toe_angle", "look_again_days", "for_vet", *SIGNS)
FINDING = ("lesion", "claw", "zone", "zone_map", "severity", "dd_stage")
ACTION = ("kind", "claw", "block_kind")


def rows(model, visit, /, **where):
    return model.objects.within(visit.scope).filter(**where).order_by("pk")


def writings(visit):
    return list(rows(CrushWriting, visit, visit=visit))


def cows(visit):
    """cow -> (record, told whom, entry), of the cows that are there."""
    findings = _by_foot(Finding, visit, FINDING)
    actions = _by_foot(ClawAction, visit, ACTION)
    feet = defaultdict(list)
    for foot in rows(TrimmedFoot, visit, trim__visit=visit):
        hanging = {"findings": findings[foot.pk], "actions": actions[foot.pk]}
        feet[foot.trim_id].append({**_values(foot, FOOT), **hanging})
    return {
        trim.cow_id: (str(trim.client_id), trim.told_vet, {**_values(trim, COW), "feet": feet[trim.pk]})
        for trim in rows(Trim, visit, visit=visit)
    }


def _by_foot(model, visit, names):
    found = defaultdict(list)
    for row in rows(model, visit, trimmed_foot__trim__visit=visit):
        found[row.trimmed_foot_id].append(_values(row, names))
    return found


def _values(row, names):
    return {name: getattr(row, name) for name in names}


def trims(visit):
    return {trim.cow_id: trim for trim in rows(Trim, visit, visit=visit)}


def taken_back(visit):
    found = Trim.objects.with_taken_back(visit.scope).filter(visit=visit, taken_back_at__isnull=False)
    return {trim.cow_id: trim for trim in found}


def open_rechecks(visit):
    """How often each (cow, foot) is open."""
    return Counter(rows(Recheck, visit, farm=visit.farm).open().values_list("cow_id", "foot"))


def blocks(visit):
    standing = rows(Block, visit, cow__farm=visit.farm, off_on__isnull=True)
    return sorted(standing.values_list("cow_id", "foot", "claw", "kind"))


def referrals(visit):
    return Counter(rows(Referral, visit, trim__visit=visit).values_list("trim__cow_id", flat=True))


def used_at(visit):
    """(source, consumable, moment) -> how much; moments of cows and of words by hand, the rest in one."""
    sums = defaultdict(Decimal)
    for row in rows(StockMovement, visit, trim__visit=visit) | rows(StockMovement, visit, visit=visit):
        at = row.at if row.use_of in ("cow", "by_hand") else None
        sums[row.use_of, row.consumable_id, at] -= row.quantity
    return {use: total for use, total in sums.items() if total}


def counted_wrong(visit, item):
    """Counts of the van that the ledger gainsays: (moment, counted, by the ledger)."""
    in_van = rows(StockMovement, visit, place__van=visit.van, consumable=item)
    lines = list(in_van.values_list("at", "quantity"))
    last = {row.at: row.counted for row in rows(StockCount, visit, place__van=visit.van, consumable=item)}
    told = {at: sum((quantity for when, quantity in lines if when <= at), Decimal(0)) for at in last}
    return [(at, last[at], told[at]) for at in last if told[at] != last[at]]


def ledger(visit):
    found = rows(StockMovement, visit, trim__visit=visit) | rows(StockMovement, visit, visit=visit)
    return list(found.values_list("pk", "quantity"))


def wash_downs(visit):
    found = rows(WashDown, visit, visit=visit)
    return {
        str(row.record): (row.dilution, row.contact_minutes, row.consumable_id, row.litres) for row in found
    }


def added(visit):
    return {str(row.uid): row.cow_id for row in rows(AddedCow, visit, cow__farm=visit.farm)}


def photos(visit):
    found = rows(TrimPhoto, visit, visit=visit).select_related("trim")
    return {str(row.uid): (row.sha256, row.trim.cow_id if row.trim else None) for row in found}
