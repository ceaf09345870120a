"""All that is kept of a farm's cows and feet, as the farm takes it out."""

from collections.abc import Iterator
from datetime import datetime
from zoneinfo import ZoneInfo

from farms.domain.cow_status import CowStatus
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, Farm
from trimops.kernel.scope import Scope
from visits.documents.data_table import DataTable
from visits.domain.ade.herd_out import CalvingOut, CowOut, FarmOut, HerdOut, ScoreOut, TrimOut
from visits.domain.crush_entry import CowEntry
from visits.domain.feet import Foot
from visits.domain.mobility import MobilityScale
from visits.models import IssuedReport, MobilityScore, ReferralLetter, Trim, TrimPhoto
from visits.selectors.data_of_cows import cow_tables, identities_of
from visits.selectors.data_of_farm import farm_own_tables
from visits.selectors.data_of_trims import trim_tables
from visits.selectors.data_of_visits import visit_tables
from visits.selectors.trim_entries import entries_of

AT_ONCE = 10_000
"""Trims whose entries are asked for in one go: a database takes only so many keys in one question."""


def farm_tables(scope: Scope, farm: Farm, zone: ZoneInfo) -> list[DataTable]:
    """Every table of one farm, with days and hours of its zone. Nineteen queries, however much there is."""
    return [
        *cow_tables(scope, farm),
        *visit_tables(scope, farm, zone),
        *trim_tables(scope, farm, zone),
        *farm_own_tables(scope, farm),
    ]


def herd_out(scope: Scope, farm: Farm) -> HerdOut:
    """The same as values for the exchange. Eight queries, and three more for each ten thousand trims."""
    trims = list(Trim.objects.within(scope).filter(visit__farm=farm).order_by("recorded_at", "pk"))
    entries: dict[int, CowEntry] = {}
    for first in range(0, len(trims), AT_ONCE):
        entries |= entries_of(scope, trims[first : first + AT_ONCE])
    scores = MobilityScore.objects.within(scope).filter(scoring__farm=farm).select_related("scoring")
    return HerdOut(
        FarmOut(farm.pk, farm.name),
        tuple(_cows(scope, farm)),
        tuple(
            TrimOut(row.pk, str(row.client_id), row.cow_id, row.recorded_at, entries[row.pk]) for row in trims
        ),
        tuple(_score(row) for row in scores.order_by("scoring__scored_on", "pk")),
    )


def photo_files(scope: Scope, farm: Farm, zone: ZoneInfo) -> Iterator[tuple[str, bytes]]:
    """(name, JPEG) one after the other, of cows that stand; named by day, cow and foot."""
    rows = TrimPhoto.objects.within(scope).filter(visit__farm=farm, trim__taken_back_at__isnull=True)
    rows = rows.filter(trim__isnull=False).select_related("trim__cow").order_by("taken_at", "pk")
    for row in rows.iterator(chunk_size=20):
        if row.trim is None:
            continue
        foot = f", {Foot(row.foot).label}" if row.foot else ""
        day = row.taken_at.astimezone(zone)
        yield (
            f"photos/{day:%Y-%m-%d} cow {file_words(row.trim.cow.number)}{foot}, {row.pk}.jpg",
            bytes(row.picture),
        )


def paper_files(scope: Scope, farm: Farm, zone: ZoneInfo) -> Iterator[tuple[str, bytes]]:
    """(name, PDF) of every report and letter in each version that was issued."""
    reports = IssuedReport.objects.within(scope).filter(visit__farm=farm).order_by("pk")
    for report in reports.iterator(chunk_size=20):
        yield (
            _paper(f"report of visit {report.visit_id}", report.made_at, report.version, zone),
            bytes(report.pdf),
        )
    letters = ReferralLetter.objects.within(scope).filter(trim__visit__farm=farm).select_related("trim__cow")
    for letter in letters.order_by("pk").iterator(chunk_size=20):
        cow = file_words(letter.trim.cow.number)
        name = f"letter for cow {cow}, trim {letter.trim_id}"
        yield _paper(name, letter.made_at, letter.version, zone), bytes(letter.pdf)


def file_words(text: str) -> str:
    """A text that every file system takes: letters, digits, dash and blank."""
    return "".join(sign if sign.isalnum() or sign in "- " else "-" for sign in text).strip() or "-"


def _paper(name: str, made_at: datetime, version: int, zone: ZoneInfo) -> str:
    return f"papers/{made_at.astimezone(zone):%Y-%m-%d} {name}, version {version}.pdf"


def _cows(scope: Scope, farm: Farm) -> Iterator[CowOut]:
    worn = identities_of(scope, farm)
    calvings: dict[int, list[CalvingOut]] = {}
    for row in Calving.objects.within(scope).filter(cow__farm=farm).order_by("calved_on", "pk"):
        calvings.setdefault(row.cow_id, []).append(CalvingOut(row.pk, row.calved_on, row.lactation))
    for cow in Cow.objects.within(scope).filter(farm=farm).order_by("pk"):
        marks = worn.get(cow.pk, {})
        yield CowOut(
            cow.pk,
            cow.number,
            CowStatus(cow.status),
            marks.get(IdentityKind.OFFICIAL_TAG, "").partition(", ")[0],
            marks.get(IdentityKind.ELECTRONIC_ID, "").partition(", ")[0],
            cow.born_on,
            tuple(calvings.get(cow.pk, ())),
        )


def _score(row: MobilityScore) -> ScoreOut:
    round_of = row.scoring
    return ScoreOut(
        row.pk, row.cow_id, round_of.scored_on, round_of.noted_at, MobilityScale(round_of.scale), row.score
    )
