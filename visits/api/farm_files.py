"""A farm's data as files, for who may take them out."""

import io
from collections.abc import Iterator

from django.http import HttpResponse

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.asked import YesOrNo
from trimops.api.kinds import FileApi
from trimops.api.op import Op
from trimops.audit.services.note_handed_out import note_handed_out
from trimops.kernel.clock import local_day
from trimops.web.file_answer import WORKBOOK, file_answer
from trimops.web.page_rates import Cost
from visits.documents.data_words import ade_files, csv_files
from visits.documents.packed_files import pack_into
from visits.documents.spreadsheet import spreadsheet
from visits.domain.ade.documents import ade_documents
from visits.selectors.farm_data import farm_tables, herd_out

ZIP = "application/zip"


class FarmFileApi(FileApi):
    """What these have in common. `what` of a farm's data it is stands in the trail, whoever took it out."""

    costs = {"get": Cost.EXPORT}
    what = ""

    def farm(self) -> Farm:
        farm = self.fetch(Farm, self.kwargs["pk"], "business")
        note_handed_out(row=farm, words=self.what, at=self.now)
        return farm

    def name(self, farm: Farm, what: str, ending: str) -> str:
        # because: a farm's name may bear signs that a header cannot
        return f"farm-{farm.pk}-{what}-{local_day(self.now, farm.business.zone)}.{ending}"

    def zip(self, farm: Farm, files: Iterator[tuple[str, bytes]], what: str) -> HttpResponse:
        out = io.BytesIO()
        pack_into(out, files, self.now.astimezone(farm.business.zone))
        return file_answer(out.getvalue(), ZIP, self.name(farm, what, "zip"))


class FarmTablesCsv(FarmFileApi):
    """Cows, visits, trims, findings and all else that is kept of a farm, a CSV file for each table, in a zip."""

    what = "tables (CSV)"
    ops = {"get": Op(Action.TAKE_DATA_OUT, "read_farm_csv", "A farm's data as CSV", media=ZIP)}

    def file(self) -> HttpResponse:
        farm = self.farm()
        zone = farm.business.zone
        tables = farm_tables(self.scope, farm, zone)
        return self.zip(farm, csv_files(tables, farm.name, self.now.astimezone(zone)), "tables")


class FarmTablesXlsx(FarmFileApi):
    """The same tables as one workbook."""

    what = "tables (spreadsheet)"
    ops = {"get": Op(Action.TAKE_DATA_OUT, "read_farm_xlsx", "A farm's data as XLSX", media=WORKBOOK)}

    def file(self) -> HttpResponse:
        farm = self.farm()
        content = spreadsheet(farm_tables(self.scope, farm, farm.business.zone), self.now)
        return file_answer(content, WORKBOOK, self.name(farm, "tables", "xlsx"))


class FarmAde(FarmFileApi):
    """The farm's cows, lesions, treatments and scores as documents of ICAR's animal data exchange (JSON), in a zip."""

    what = "animal data (ICAR ADE)"
    ops = {
        "get": Op(
            Action.TAKE_DATA_OUT,
            "read_farm_ade",
            "A farm's data for other programs",
            media=ZIP,
            query={"common": YesOrNo(help_text="With the property that is only proposed to the standard.")},
        )
    }

    def file(self) -> HttpResponse:
        farm = self.farm()
        common = self.asked.get("common", False)
        documents = ade_documents(herd_out(self.scope, farm), self.now, common_procedure=common)
        files = ade_files(documents, farm.name, self.now.astimezone(farm.business.zone))
        return self.zip(farm, files, "icar-ade")
