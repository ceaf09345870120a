"""Which of a farm's links for its vet still stand."""

from datetime import datetime

from django.db.models import BooleanField, Case, Exists, OuterRef, Q, Value, When

from farms.models import FarmAccess, VetPass
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet


def is_still_given(row: VetPass) -> bool:
    """A link that a person of the farm made ends with their right to make it; who left could else keep a way in.

    One that the business made for the farm stands until its day.
    """
    maker = Membership.objects.filter(business_id=row.business_id, user_id=row.made_by_id).first()
    if maker is None or maker.role != Role.FARM:
        return True
    accesses = FarmAccess.objects.within(row.scope).filter(membership=maker, farm_id=row.farm_id)
    return maker.is_current and accesses.filter(hands_over=True).exists()


def with_standing(rows: TenantQuerySet[VetPass], scope: Scope, at: datetime) -> TenantQuerySet[VetPass]:
    """Each with `stands`: neither closed nor over at `at`, and `is_still_given`; in the same query."""
    makers = Membership.objects.filter(
        business=OuterRef("business"), user=OuterRef("made_by"), role=Role.FARM
    )
    accesses = FarmAccess.objects.within(Scope(scope.business_id)).filter(
        farm=OuterRef("farm"),
        membership__user=OuterRef("made_by"),
        membership__joined_at__isnull=False,
        membership__ended_at__isnull=True,
        hands_over=True,
    )
    is_open = Q(closed_at__isnull=True, expires_at__gt=at)
    stands = When(is_open & (~Exists(makers) | Exists(accesses)), then=Value(value=True))
    return rows.annotate(stands=Case(stands, default=Value(value=False), output_field=BooleanField()))
