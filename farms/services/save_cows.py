"""Many cows of one farm are put on the list, or mended, in one go."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import datetime

from django.db import transaction

from farms.domain.calvings import KnownCalving, calving_meant
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity, Farm
from farms.services.refuse_erased import refuse_erased
from farms.services.save_cow import normalised_identity, say_since_when

TOLD = (
    *("number", "status", "born_on", "calved_on", "calving_due", "dry_off_due"),
    *("entered_on", "left_on", "note"),
)


@dataclass(frozen=True)
class CowWord:
    """A cow, new or known, with what was said set on it; each identity replaces the one of its kind, "" takes it away.

    `lactation`: the number of the lactation that her last calving began.
    """

    cow: Cow
    identities: dict[IdentityKind, str] = field(default_factory=dict)
    lactation: int | None = None


@transaction.atomic
def save_cows(*, farm: Farm, words: Sequence[CowWord], at: datetime) -> list[Cow]:
    """Keep all of them or none, as `save_cow` keeps one; some twenty queries, however many there are.

    Each cow once. NotAnElectronicId, ValidationError and FarmIsErased as there.
    """
    refuse_erased(farm=farm)
    for word in words:
        say_since_when(word.cow, at)
        # because: farm and business are at hand; to look for each cow's own would be two queries a cow
        word.cow.clean_fields(exclude={"farm", "business"})
    new = [word.cow for word in words if word.cow.pk is None]
    known = [word.cow for word in words if word.cow.pk is not None]
    Cow.objects.bulk_create(new)
    Cow.objects.within(farm.scope).bulk_update(known, TOLD)
    _keep_calvings(farm, [word for word in words if word.cow.calved_on])
    _keep_identities(farm, words)
    return [word.cow for word in words]


def _keep_calvings(farm: Farm, words: Sequence[CowWord]) -> None:
    rows = Calving.objects.within(farm.scope).filter(cow__in=[word.cow.pk for word in words])
    of_cow: dict[int, list[Calving]] = {}
    for row in rows:
        of_cow.setdefault(row.cow_id, []).append(row)
    told = [_calving(word, of_cow.get(word.cow.pk, [])) for word in words]
    Calving.objects.bulk_create([row for row in told if row.pk is None])
    rows.bulk_update([row for row in told if row.pk is not None], ["calved_on", "lactation"])


def _calving(word: CowWord, rows: Sequence[Calving]) -> Calving:
    """The row as it is to be kept: one that is on file put right, or a new one (`note_calving`)."""
    cow, day = word.cow, word.cow.calved_on
    assert day is not None
    meant = calving_meant(
        day, word.lactation, [KnownCalving(row.pk, row.calved_on, row.lactation) for row in rows]
    )
    known = next((row for row in rows if meant and row.pk == meant.id), None)
    row = known or Calving(business_id=cow.business_id, cow=cow)
    row.calved_on, row.lactation = day, word.lactation or row.lactation
    row.clean_fields(exclude={"cow", "business"})
    return row


def _keep_identities(farm: Farm, words: Sequence[CowWord]) -> None:
    for kind in sorted({kind for word in words for kind in word.identities}):
        said = [word for word in words if kind in word.identities]
        rows = CowIdentity.objects.within(farm.scope).filter(kind=kind.value)
        rows.filter(cow__in=[word.cow.pk for word in said]).delete()
        CowIdentity.objects.bulk_create(_identities(kind, said))


def _identities(kind: IdentityKind, words: Sequence[CowWord]) -> Iterator[CowIdentity]:
    for word in words:
        if value := normalised_identity(kind, word.identities[kind]):
            cow = word.cow
            row = CowIdentity(business_id=cow.business_id, cow=cow, kind=kind.value, value=value)
            row.clean_fields(exclude={"cow", "business"})
            yield row
