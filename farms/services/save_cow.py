"""A cow is put on the list, or what is known of her is mended."""

from datetime import datetime

from django.db import transaction

from farms.domain.cow_status import CowStatus
from farms.domain.ear_tag import normalise_ear_tag
from farms.domain.electronic_id import normalise_electronic_id
from farms.domain.identity_kind import IdentityKind
from farms.models import Cow, CowIdentity
from farms.services.note_calving import note_calving
from farms.services.refuse_erased import refuse_erased
from trimops.kernel.clock import local_day

NORMALISERS = {
    IdentityKind.OFFICIAL_TAG: normalise_ear_tag,
    IdentityKind.ELECTRONIC_ID: normalise_electronic_id,
}


@transaction.atomic
def save_cow(
    *,
    cow: Cow,
    identities: dict[IdentityKind, str] | None = None,
    lactation: int | None = None,
    at: datetime | None = None,
) -> Cow:
    """Keep the cow; each identity given replaces the one of its kind, an empty one takes it away.

    Her calving day goes among her calvings, with the number of the lactation that it began. With `at`, a cow that
    is new has been in the herd since that day, and one that is sold or dead has left on it, unless told.
    """
    if not cow.pk:
        refuse_erased(farm=cow.farm)
    say_since_when(cow, at)
    cow.full_clean()
    cow.save()
    if cow.calved_on:
        note_calving(cow=cow, calved_on=cow.calved_on, lactation=lactation)
    for kind, value in (identities or {}).items():
        _set_identity(cow, kind, value)
    return cow


def say_since_when(cow: Cow, at: datetime | None) -> None:
    """In the herd since the day of `at` if she is new, gone since it if she has left, unless a day is told."""
    if CowStatus(cow.status).is_on_farm:
        cow.left_on = None
    if at is None:
        return
    day = local_day(at, cow.business.zone)
    if not cow.pk:
        cow.entered_on = cow.entered_on or day
    if not CowStatus(cow.status).is_on_farm:
        cow.left_on = cow.left_on or day


def normalised_identity(kind: IdentityKind, value: str) -> str:
    """As it is kept; "" for none. NotAnElectronicId says what to mend."""
    bare = value.strip()
    return NORMALISERS.get(kind, str.strip)(bare) if bare else ""


def _set_identity(cow: Cow, kind: IdentityKind, value: str) -> None:
    CowIdentity.objects.within(cow.scope).filter(cow=cow, kind=kind.value).delete()
    if kept := normalised_identity(kind, value):
        row = CowIdentity(business_id=cow.business_id, cow=cow, kind=kind.value, value=kept)
        row.full_clean()
        row.save()
