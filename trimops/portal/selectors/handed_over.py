"""All of a farm's data in one go, as it is handed over to the farm."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from farms.models import Cow, Farm
from invoicing.models import Invoice
from trimops.kernel.scope import Scope
from trimops.portal.selectors.money_handed_over import money_handed_over
from visits.documents.data_words import ade_files, csv_files
from visits.documents.spreadsheet import spreadsheet
from visits.domain.ade.documents import ade_documents
from visits.models import IssuedReport, ReferralLetter, Trim, TrimPhoto
from visits.selectors.farm_data import farm_tables, herd_out, paper_files, photo_files

Files = Iterator[tuple[str, bytes]]


@dataclass(frozen=True)
class DataCounts:
    """What there is to take out."""

    cows: int
    trims: int
    photos: int
    papers: int
    invoices: int


def data_counts(scope: Scope, farm: Farm) -> DataCounts:
    """Six queries. `invoices`: issued ones and credit notes, for who may see money."""
    photos = TrimPhoto.objects.within(scope).filter(
        visit__farm=farm, trim__isnull=False, trim__taken_back_at__isnull=True
    )
    reports = IssuedReport.objects.within(scope).filter(visit__farm=farm)
    letters = ReferralLetter.objects.within(scope).filter(trim__visit__farm=farm)
    return DataCounts(
        Cow.objects.within(scope).filter(farm=farm).count(),
        Trim.objects.within(scope).filter(visit__farm=farm).count(),
        photos.count(),
        reports.count() + letters.count(),
        Invoice.objects.within(scope).filter(farm=farm).issued().count(),
    )


def csv_handed_over(scope: Scope, farm: Farm, at: datetime) -> Files:
    """A CSV file for each table."""
    zone = farm.business.zone
    return csv_files(farm_tables(scope, farm, zone), farm.name, at.astimezone(zone))


def workbook_handed_over(scope: Scope, farm: Farm, at: datetime) -> bytes:
    """The same tables as one spreadsheet."""
    return spreadsheet(farm_tables(scope, farm, farm.business.zone), at)


def ade_handed_over(scope: Scope, farm: Farm, at: datetime, *, common_procedure: bool = False) -> Files:
    """The exchange's documents; `common_procedure` adds the word that is only proposed there."""
    documents = ade_documents(herd_out(scope, farm), at, common_procedure=common_procedure)
    return ade_files(documents, farm.name, at.astimezone(farm.business.zone))


def all_handed_over(scope: Scope, farm: Farm, at: datetime, *, with_invoices: bool) -> Files:
    """Tables, spreadsheet, exchange, papers, photos, one file after the other; for who may see money, that as well."""
    zone = farm.business.zone
    tables = farm_tables(scope, farm, zone)
    for name, content in csv_files(tables, farm.name, at.astimezone(zone)):
        yield f"tables/{name}", content
    yield "cows and feet.xlsx", spreadsheet(tables, at)
    del tables  # a large herd's are a quarter of a million rows, and the exchange needs as much again
    for name, content in ade_handed_over(scope, farm, at):
        yield f"icar ade/{name}", content
    yield from paper_files(scope, farm, zone)
    if with_invoices:
        yield from money_handed_over(farm, at)
    yield from photo_files(scope, farm, zone)
