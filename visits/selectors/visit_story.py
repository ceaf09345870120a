"""What a visit's page tells."""

from dataclasses import dataclass

from django.db.models import Prefetch

from trimops.kernel.scope import Scope
from visits.models import (
    AskedCow,
    Block,
    ClawAction,
    Finding,
    Recheck,
    Referral,
    Trim,
    TrimmedFoot,
    Visit,
    VisitEvent,
)
from visits.models.trim import TrimQuerySet


@dataclass(frozen=True)
class VisitStory:
    """The visit's cows asked for, cows done with their feet, what is the vet's, and its history."""

    asked: list[AskedCow]
    trims: list[Trim]
    referrals: list[Referral]
    blocks: list[Block]
    rechecks: list[Recheck]
    events: list[VisitEvent]


def visit_story(scope: Scope, visit: Visit) -> VisitStory:
    """All of it in a fixed number of queries."""
    trims = trims_with_feet(scope).filter(visit=visit).order_by("recorded_at", "id")
    return VisitStory(
        asked=list(
            AskedCow.objects.within(scope).filter(visit=visit).select_related("cow").order_by("cow__number")
        ),
        trims=list(trims),
        referrals=list(Referral.objects.within(scope).filter(trim__visit=visit).select_related("trim__cow")),
        blocks=list(Block.objects.within(scope).filter(put_on_by__visit=visit).select_related("cow")),
        rechecks=list(Recheck.objects.within(scope).filter(from_trim__visit=visit).select_related("cow")),
        events=list(VisitEvent.objects.within(scope).filter(visit=visit).select_related("by")),
    )


def trims_with_feet(scope: Scope) -> TrimQuerySet:
    """Trims with cow, feet, findings and actions at hand."""
    feet = TrimmedFoot.objects.within(scope).order_by("id")
    feet = feet.prefetch_related(
        Prefetch("findings", queryset=Finding.objects.within(scope).order_by("id")),
        Prefetch("actions", queryset=ClawAction.objects.within(scope).order_by("id")),
    )
    rows = Trim.objects.within(scope).select_related("cow", "visit", "recorded_by")
    return rows.prefetch_related(
        Prefetch("feet", queryset=feet), Prefetch("referrals", queryset=Referral.objects.within(scope))
    )
