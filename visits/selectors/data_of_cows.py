"""The tables of a farm's cows: who they are, when they calved, how they walked."""

from collections import defaultdict

from farms.domain.cow_status import CowStatus
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity, Farm
from trimops.kernel.scope import Scope
from visits.documents.data_table import DataTable, yes_no
from visits.domain.mobility import MobilityScale
from visits.models import MobilityScore


def _worn_as(kind: IdentityKind) -> str:
    """A heading for it; the number that the farm calls her by has one of its own already."""
    return "Another number" if kind is IdentityKind.MANAGEMENT_NUMBER else kind.label


COW_HEADINGS = (
    *("Cow key", "Number", *(_worn_as(kind) for kind in IdentityKind), "Status", "Born on", "Calved on"),
    *("Calving due", "Dry-off due", "In the herd since", "Left on", "Note"),
)


def cow_tables(scope: Scope, farm: Farm) -> list[DataTable]:
    """Cows, calvings and scores. Four queries."""
    return [_cows(scope, farm), _calvings(scope, farm), _scores(scope, farm)]


def identities_of(scope: Scope, farm: Farm) -> dict[int, dict[str, str]]:
    """Cow's key -> kind -> what she wears; two of one kind with a comma between. One query."""
    found: defaultdict[int, dict[str, str]] = defaultdict(dict)
    rows = CowIdentity.objects.within(scope).filter(cow__farm=farm).order_by("pk")
    for cow, kind, value in rows.values_list("cow_id", "kind", "value"):
        before = found[cow].get(kind)
        found[cow][kind] = f"{before}, {value}" if before else value
    return found


def _cows(scope: Scope, farm: Farm) -> DataTable:
    worn = identities_of(scope, farm)
    rows = [
        (
            cow.pk,
            cow.number,
            *(worn.get(cow.pk, {}).get(kind, "") for kind in IdentityKind),
            CowStatus(cow.status).label,
            *(cow.born_on, cow.calved_on, cow.calving_due, cow.dry_off_due, cow.entered_on, cow.left_on),
            cow.note,
        )
        for cow in Cow.objects.within(scope).filter(farm=farm).order_by("pk")
    ]
    return DataTable("cows", "Every cow of the farm, also those that left.", COW_HEADINGS, rows)


def _calvings(scope: Scope, farm: Farm) -> DataTable:
    rows = Calving.objects.within(scope).filter(cow__farm=farm).order_by("calved_on", "pk")
    return DataTable(
        "calvings",
        "Each calving that is known. Lactation: the number of the lactation it began.",
        ("Cow key", "Cow", "Calved on", "Lactation"),
        list(rows.values_list("cow_id", "cow__number", "calved_on", "lactation")),
    )


def _scores(scope: Scope, farm: Farm) -> DataTable:
    rows = MobilityScore.objects.within(scope).filter(scoring__farm=farm).select_related("scoring", "cow")
    found = [
        (
            *(row.cow_id, row.cow.number, row.scoring.scored_on),
            *(MobilityScale(row.scoring.scale).label, row.score),
            *(yes_no(row.scoring.whole_herd), row.scoring.scored_by),
        )
        for row in rows.order_by("scoring__scored_on", "pk")
    ]
    return DataTable(
        "scores",
        "Mobility scores of rounds behind the herd; those noted at the crush stand in trims.",
        ("Cow key", "Cow", "Day", "Score sheet", "Score", "The whole herd was scored", "Scored by"),
        found,
    )
