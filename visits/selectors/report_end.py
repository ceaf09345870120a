"""How a visit was ended: washed down with what, what was used up, what was told to whom."""

from datetime import datetime
from decimal import Decimal

from django.db.models import Q

from trimops.kernel.scope import Scope
from visits.documents.visit_report_content import Consumable, HygieneStep
from visits.domain.cautions import FOR_THE_FARM
from visits.domain.kit.stock_kinds import ConsumableKind
from visits.models import Referral, StockMovement, Visit, WashDown
from visits.selectors.crush_story import wash_downs_of

WASH_STEPS = (
    "Crush, straps and floor hosed down",
    "Knives and discs scrubbed, then disinfected",
    "Boots and overalls",
)


ON_THE_COW = (ConsumableKind.BLOCK, ConsumableKind.GLUE, ConsumableKind.WRAP, ConsumableKind.DRESSING)


def hygiene_steps(scope: Scope, visit: Visit) -> tuple[HygieneStep, ...]:
    """Each wash-down with its product, then the usual steps, done or not."""
    zone = visit.business.zone
    washed = [
        HygieneStep(wash_words(row), True, row.washed_at.astimezone(zone))
        for row in wash_downs_of(scope, visit)
    ]
    steps = (*WASH_STEPS, visit.hygiene_note) if visit.hygiene_note else WASH_STEPS
    is_done = visit.washed_down or bool(washed)
    return (*washed, *(HygieneStep(words, is_done) for words in steps))


def wash_words(row: WashDown) -> str:
    """ "Disinfected with peracetic acid, 1:100, left on for 10 min"."""
    parts = [f"Disinfected with {row.substance}", row.dilution]
    if row.contact_minutes:
        parts.append(f"left on for {_plain(row.contact_minutes)} min")
    return ", ".join(part for part in parts if part)


def consumables_used(scope: Scope, visit: Visit) -> tuple[Consumable, ...]:
    """What went onto the cows, as corrected by hand at the end of the visit; by name.

    What the trimmer wears out (gloves, discs) or washes with is no business of the farm.
    """
    of_visit = Q(trim__visit=visit) | Q(visit=visit)
    rows = StockMovement.objects.within(scope).filter(of_visit, consumable__kind__in=ON_THE_COW)
    rows = rows.select_related("consumable")
    used: dict[tuple[str, str], Decimal] = {}
    for row in rows:
        key = (row.consumable.name, row.consumable.unit)
        used[key] = used.get(key, Decimal(0)) - row.quantity
    return tuple(
        Consumable(name, quantity.normalize(), unit)
        for (name, unit), quantity in sorted(used.items())
        if quantity
    )


def told_words(row: Referral, visit: Visit) -> str:
    """ "Told J. Marsden 10:20."; empty when nobody was told yet."""
    if not row.told_whom:
        return ""
    at = f" {row.told_at.astimezone(visit.business.zone):%H:%M}" if row.told_at else ""
    return f"Told {row.told_whom}{at}."


def told_lines(text: str) -> tuple[str, ...]:
    """The words of the sign-off line by line, without the cautions that the report prints anyway."""
    lines = (line.strip() for line in text.splitlines())
    return tuple(line for line in lines if line and line not in FOR_THE_FARM)


def signed_at(visit: Visit) -> datetime:
    """When the account was received, in the business's zone."""
    return (visit.finished_at or visit.changed_at).astimezone(visit.business.zone)


def _plain(number: Decimal) -> str:
    return f"{number.normalize():f}"
