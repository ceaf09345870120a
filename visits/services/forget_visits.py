"""What was noted of a farm's visits is erased; what an invoice hangs on stays as a bare row."""

from collections.abc import Collection, Iterator

from django.db import transaction

from farms.models import Farm
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from visits.models import (
    AddedCow,
    AskedCow,
    BladeTurn,
    CalendarAddress,
    CrushWriting,
    DraftChange,
    DraftChoice,
    HeldHour,
    Invitation,
    IssuedReport,
    LoneWatch,
    MobilityScoring,
    PlanLock,
    Recheck,
    StockMovement,
    Trim,
    TrimPhoto,
    Visit,
    VisitEvent,
    VisitMessage,
    WashDown,
)
from visits.services.kit.keep_faults import keep_faults

WORDS_OF_A_VISIT = (
    *("asked_by", "note", "mobility_scale", "called_off_because", "hygiene_note"),
    *("signed_by", "was_done", "farm_to_do"),
)
"""Columns of a visit that hold what somebody said; they are emptied where the visit stays."""


@transaction.atomic
def forget_visits(*, farm: Farm, kept: Collection[int]) -> dict[str, int]:
    """Erase all of the farm's visits but those of `kept`, which keep day, van and counts alone. How many of what went.

    The stock ledger keeps its lines, without the cow they were used on.
    """
    scope = Scope(farm.business_id)
    _let_go_of_stock(scope, farm)
    keep_faults(farm=farm)
    gone = {}
    for name, rows in _rows_of(scope, farm):
        gone[name] = rows.count()
        rows.delete()
    visits = Visit.objects.within(scope).filter(farm=farm)
    bare = dict.fromkeys(WORDS_OF_A_VISIT, "")
    visits.filter(pk__in=kept).update(**bare, mobility_score=None)
    rest = visits.exclude(pk__in=kept)
    gone["visits"] = rest.count()
    rest.delete()
    return {name: count for name, count in gone.items() if count}


def _rows_of(scope: Scope, farm: Farm) -> Iterator[tuple[str, TenantQuerySet[TenantModel]]]:
    """Each kind of rows, in an order in which nothing is protected by what comes later."""
    yield "lines from phones", CrushWriting.objects.within(scope).filter(visit__farm=farm)
    yield "photos", TrimPhoto.objects.within(scope).filter(visit__farm=farm)
    yield "blades in hand", BladeTurn.objects.within(scope).filter(visit__farm=farm)
    yield "wash-downs", WashDown.objects.within(scope).filter(visit__farm=farm)
    yield "reports", IssuedReport.objects.within(scope).filter(visit__farm=farm)
    yield "re-checks", Recheck.objects.within(scope).filter(farm=farm)
    # Letters, blocks, feet, findings and what was done go with the trims.
    yield "cows at the crush", Trim.objects.with_taken_back(scope).filter(visit__farm=farm)
    yield "cows asked for", AskedCow.objects.within(scope).filter(visit__farm=farm)
    yield "draft changes", DraftChange.objects.within(scope).filter(visit__farm=farm)
    yield "draft rules", DraftChoice.objects.within(scope).filter(farm=farm)
    yield "held hours", HeldHour.objects.within(scope).filter(farm=farm)
    yield "rounds of scores", MobilityScoring.objects.within(scope).filter(farm=farm)
    yield "calendar addresses", CalendarAddress.objects.within(scope).filter(farm=farm)
    yield "calendar invitations", Invitation.objects.within(scope).filter(visit__farm=farm)
    yield "locks in the plan", PlanLock.objects.within(scope).filter(visit__farm=farm)
    yield "messages about visits", VisitMessage.objects.within(scope).filter(visit__farm=farm)
    # Who was asked and told, and the log, go with their watch.
    yield "watches over lone work", LoneWatch.objects.within(scope).filter(visit__farm=farm)
    yield "lines of history", VisitEvent.objects.within(scope).filter(visit__farm=farm)
    yield "cows added at the crush", AddedCow.objects.within(scope).filter(cow__farm=farm)


def _let_go_of_stock(scope: Scope, farm: Farm) -> None:
    ledger = StockMovement.objects.within(scope)
    ledger.filter(trim__visit__farm=farm).update(trim=None)
    ledger.filter(visit__farm=farm).update(visit=None)
