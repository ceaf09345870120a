"""Whose names go with a farm."""

from farms.models import Erasure, Farm, FarmAccess, VetPass
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.tenancy.models import TenantModel
from visits.models import CalendarAddress, DraftChange, HeldHour, MobilityScoring, VisitEvent

DEEDS: tuple[tuple[type[TenantModel], str, str], ...] = (
    (VisitEvent, "by", "visit__farm"),
    (HeldHour, "by", "farm"),
    (DraftChange, "by", "visit__farm"),
    (MobilityScoring, "noted_by", "farm"),
    (CalendarAddress, "made_by", "farm"),
    (VetPass, "made_by", "farm"),
    (Erasure, "asked_by", "farm"),
)
"""Rows that say what a person of a farm did there: whose, by which column, at which farm."""


def people_of_farm(farm: Farm) -> list[Membership]:
    """Farm clients who see it, and those who left and stand in no other farm's history. Ten queries.

    Which farm a person was of is not kept once they have left; so where nothing else needs the name, it goes.
    """
    accesses = FarmAccess.objects.within(farm.scope)
    clients = Membership.objects.filter(business_id=farm.business_id, role=Role.FARM).order_by("pk")
    here = clients.filter(pk__in=accesses.filter(farm=farm).values("membership_id"))
    left = clients.filter(ended_at__isnull=False).exclude(pk__in=accesses.values("membership_id"))
    return [*here, *left.exclude(user_id__in=_known_elsewhere(farm))]


def _known_elsewhere(farm: Farm) -> set[int]:
    known: set[int] = set()
    for model, by, at in DEEDS:
        rows = model.objects.within(farm.scope).exclude(**{at: farm})
        known |= set(rows.filter(**{f"{by}__isnull": False}).values_list(f"{by}_id", flat=True))
    return known
