"""The kit as CSV files."""

from django.http import HttpRequest, HttpResponse
from django.utils.text import slugify

from trimops.accounts.actions import Action
from trimops.kernel.errors import NotFound
from trimops.web.file_answer import file_answer
from trimops.web.scoped_page import ScopedPage
from visits.documents.csv_file import csv_file
from visits.selectors.kit.edge_tables import EDGE_TABLES
from visits.selectors.kit.kit_tables import STOCK_TABLES

CSV = "text/csv; charset=utf-8"
TABLES = {**STOCK_TABLES, **EDGE_TABLES}


class KitCsvPage(ScopedPage):
    does = Action.SEE_KIT

    def get(self, request: HttpRequest, what: str) -> HttpResponse:
        table = TABLES.get(what)
        if table is None:
            raise NotFound("The kit has no such list.")
        business = self.seat.business
        name = f"{slugify(business.name) or 'kit'}_{what}_{self.now.astimezone(business.zone):%Y-%m-%d}.csv"
        return file_answer(csv_file(table(business)), CSV, name)
