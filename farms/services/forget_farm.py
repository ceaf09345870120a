"""The farm's own rows are erased; the farm stays as a number for its invoices to hang on."""

from collections.abc import Iterator
from datetime import datetime
from decimal import Decimal

from django.db import transaction
from django.db.models import ProtectedError

from farms.domain.handling import CrushPlace, PowerSupply, Shelter
from farms.domain.hygiene import HygieneLevel
from farms.models import (
    Contact,
    Cow,
    Erasure,
    Farm,
    FarmAccess,
    HerdImport,
    HygieneChange,
    Milking,
    Payer,
    VetPass,
)
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet


@transaction.atomic
def forget_farm(*, farm: Farm, at: datetime) -> dict[str, int]:
    """Erase cows, people, lists, links and all that is known of the place. How many of what went.

    What hangs on the cows from above (trims, writings) must be gone before.
    """
    scope = Scope(farm.business_id)
    gone = {}
    for name, rows in _rows_of(scope, farm):
        gone[name] = rows.count()
        rows.delete()
    Erasure.objects.within(scope).filter(farm=farm).update(note="")
    payer = farm.payer
    _make_bare(farm, at)
    if payer is not None and not Farm.objects.within(scope).filter(payer=payer).exists():
        gone["payers"] = 1
        _forget_payer(payer)
    return {name: count for name, count in gone.items() if count}


def _rows_of(scope: Scope, farm: Farm) -> Iterator[tuple[str, TenantQuerySet[TenantModel]]]:
    # Identities and calvings go with the cows.
    yield "cows", Cow.objects.within(scope).filter(farm=farm)
    yield "contacts", Contact.objects.within(scope).filter(farm=farm)
    yield "people let in", FarmAccess.objects.within(scope).filter(farm=farm)
    yield "vet's links", VetPass.objects.within(scope).filter(farm=farm)
    yield "herd lists", HerdImport.objects.within(scope).filter(farm=farm)
    yield "milking times", Milking.objects.within(scope).filter(farm=farm)
    yield "changes of hygiene", HygieneChange.objects.within(scope).filter(farm=farm)


def _forget_payer(payer: Payer) -> None:
    """Deleted; where an issued invoice hangs on it, only its key is left, as of the farm."""
    try:
        with transaction.atomic():
            payer.delete()
    except ProtectedError:
        payer.name = f"Erased payer {payer.pk}"
        payer.address = payer.country = payer.email = payer.vat_number = ""
        payer.payment_days = None
        payer.full_clean()
        payer.save()


def _make_bare(farm: Farm, at: datetime) -> None:
    """Only the key is left, and that it was erased; every other column is as of a farm nobody knows."""
    farm.name = f"Erased farm {farm.pk}"
    farm.address = farm.access_notes = farm.email = farm.phone = ""
    farm.vat_number = farm.hygiene_reason = farm.wash_rule = farm.country = ""
    farm.latitude = farm.longitude = Decimal(0)
    farm.place_sequence, farm.shown_since = farm.place_sequence + 1, at
    farm.payer, farm.hygiene_since = None, None
    farm.herd_size, farm.routine_cows, farm.routine_interval_days = 0, 1, 90
    farm.hygiene_level = HygieneLevel.USUAL.value
    farm.crush_place, farm.power = CrushPlace.BROUGHT.value, PowerSupply.AMP_13.value
    farm.shelter = Shelter.ROOF.value
    farm.has_hard_standing = farm.has_water = farm.has_light = True
    farm.is_active, farm.erased_at = False, at
    farm.full_clean()
    farm.save()
