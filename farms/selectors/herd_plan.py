"""What a kept herd list would change, against the cows as they stand now."""

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import HerdList, read_herd_list
from farms.domain.herd_plan import HerdPlan, KnownCow, plan_herd_import
from farms.domain.herd_table import read_table
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity, Farm, HerdImport

CALVING = ("cow_id", "calved_on", "lactation")


def herd_list_of(herd_import: HerdImport) -> HerdList:
    """The rows of the kept file."""
    return read_herd_list(read_table(bytes(herd_import.content)))


def herd_plan_of(herd_import: HerdImport) -> HerdPlan:
    """New, changed, unchanged and refused rows, as of now."""
    return plan_herd_import(herd_list_of(herd_import).rows, known_cows(herd_import.farm))


def known_cows(farm: Farm) -> list[KnownCow]:
    """The farm's cows, those that left too, with their worldwide identities and the number of their lactation."""
    identities: dict[tuple[int, str], str] = {}
    for row in CowIdentity.objects.within(farm.scope).filter(cow__farm=farm).order_by("-id"):
        identities[(row.cow_id, row.kind)] = row.value
    calvings = Calving.objects.within(farm.scope).filter(cow__farm=farm)
    lactations = {(cow, day): number for cow, day, number in calvings.values_list(*CALVING)}
    cows = Cow.objects.within(farm.scope).filter(farm=farm)
    return [
        KnownCow(
            id=cow.pk,
            number=cow.number,
            official_tag=identities.get((cow.pk, IdentityKind.OFFICIAL_TAG), ""),
            electronic_id=identities.get((cow.pk, IdentityKind.ELECTRONIC_ID), ""),
            status=CowStatus(cow.status),
            born_on=cow.born_on,
            calved_on=cow.calved_on,
            calving_due=cow.calving_due,
            dry_off_due=cow.dry_off_due,
            lactation=lactations.get((cow.pk, cow.calved_on)),
            left_on=cow.left_on,
        )
        for cow in cows
    ]
