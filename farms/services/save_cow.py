"""A cow is put on the list, or what is known of her is mended."""

from django.db import transaction

from farms.domain.ear_tag import normalise_ear_tag
from farms.domain.electronic_id import normalise_electronic_id
from farms.domain.identity_kind import IdentityKind
from farms.models import Cow, CowIdentity

NORMALISERS = {
    IdentityKind.OFFICIAL_TAG: normalise_ear_tag,
    IdentityKind.ELECTRONIC_ID: normalise_electronic_id,
}


@transaction.atomic
def save_cow(*, cow: Cow, identities: dict[IdentityKind, str] | None = None) -> Cow:
    """Keep the cow; each identity given replaces the one of its kind, an empty one takes it away."""
    cow.full_clean()
    cow.save()
    for kind, value in (identities or {}).items():
        _set_identity(cow, kind, value.strip())
    return cow


def _set_identity(cow: Cow, kind: IdentityKind, value: str) -> None:
    CowIdentity.objects.within(cow.scope).filter(cow=cow, kind=kind.value).delete()
    if not value:
        return
    normalise = NORMALISERS.get(kind, str.strip)
    row = CowIdentity(business_id=cow.business_id, cow=cow, kind=kind.value, value=normalise(value))
    row.full_clean()
    row.save()
