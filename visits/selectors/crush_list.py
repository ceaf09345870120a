"""The cows expected at the crush, with what is known of each."""

from dataclasses import dataclass
from datetime import date

from farms.models import Cow
from trimops.kernel.scope import Scope
from visits.models import AskedCow, Block, Recheck, Trim, Visit


@dataclass(frozen=True)
class CrushLine:
    """One cow: why she is wanted, blocks on, and whether she is done."""

    cow: Cow
    why: str
    block_due: date | None
    is_done: bool


def crush_list(scope: Scope, visit: Visit) -> list[CrushLine]:
    """Cows asked for, cows with an open re-check due by then, and cows done already; those to do first."""
    why: dict[int, list[str]] = {}
    cows: dict[int, Cow] = {}
    for asked in AskedCow.objects.within(scope).filter(visit=visit).select_related("cow"):
        cows[asked.cow_id] = asked.cow
        why.setdefault(asked.cow_id, []).append(asked.why)
    day = (visit.planned_start or visit.changed_at).date()
    due = Recheck.objects.within(scope).open().filter(farm_id=visit.farm_id, due_from__lte=day)
    for recheck in due.select_related("cow"):
        cows[recheck.cow_id] = recheck.cow
        words = f"{recheck.get_foot_display()}: {recheck.what}"
        if not any(words in known for known in why.setdefault(recheck.cow_id, [])):
            why[recheck.cow_id].append(words)
    done = {
        trim.cow_id: trim.cow for trim in Trim.objects.within(scope).filter(visit=visit).select_related("cow")
    }
    blocks = dict(
        Block.objects.within(scope)
        .filter(cow__farm_id=visit.farm_id, off_on__isnull=True)
        .order_by("-off_due")
        .values_list("cow_id", "off_due")
    )
    lines = [
        CrushLine(cow, "; ".join(why.get(pk, [])) or "not on the list", blocks.get(pk), pk in done)
        for pk, cow in {**cows, **done}.items()
    ]
    return sorted(lines, key=lambda line: (line.is_done, line.cow.number.zfill(12)))
