"""Where the chains of the trail end: who keeps an end elsewhere can tell later whether the trail was made anew."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from trimops.audit.models import AuditCut, AuditSeal
from trimops.kernel.scope import Scope

WITHIN = timedelta(days=3)
"""No transaction is open for longer."""
BEGINNING = datetime(1990, 1, 1, tzinfo=UTC)


@dataclass(frozen=True)
class Head:
    """The last seal of a business, or the one that was last at some time: its position (from 1) and its chain."""

    position: int
    chain: str


def head_of(scope: Scope) -> Head | None:
    """The end of the chain now, which may be where all was cut; None where nothing was sealed yet."""
    for links in (AuditSeal.objects.within(scope), AuditCut.objects.within(scope)):
        if row := links.order_by("-position").values_list("position", "chain").first():
            return Head(*row)
    return None


def unsealed_since(scope: Scope) -> datetime:
    """An entry from before this that has no seal was put there some other way than by being written.

    By the last sealing, not by the clock: a machine that was off for a week left entries waiting that are good.
    """
    last = AuditSeal.objects.within(scope).order_by("-position").values_list("sealed_at", flat=True).first()
    return last - WITHIN if last else BEGINNING
