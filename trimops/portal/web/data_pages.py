"""Taking a farm's data out, and asking that it be erased: for people of the farm with that right."""

import tempfile
from collections.abc import Iterator
from datetime import datetime

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase, StreamingHttpResponse
from django.shortcuts import redirect

from farms.models import Erasure, Farm
from farms.selectors.erasures import open_erasure
from farms.services.ask_erasure import ask_erasure
from farms.services.note_data_taken import note_data_taken
from farms.services.withdraw_erasure import withdraw_erasure
from trimops.accounts.actions import Action
from trimops.audit.services.note_handed_out import note_handed_out
from trimops.kernel.clock import local_day
from trimops.portal.selectors.handed_over import (
    Files,
    ade_handed_over,
    all_handed_over,
    csv_handed_over,
    data_counts,
    workbook_handed_over,
)
from trimops.portal.web.client_page import ClientPage
from trimops.web.file_answer import WORKBOOK, file_answer
from trimops.web.page_rates import Cost
from trimops.web.scoped_page import ScopedPage
from visits.documents.packed_files import pack_into

IN_MEMORY = 4 * 1024 * 1024
PIECE = 64 * 1024
ZIP = "application/zip"


class DataPage(ClientPage):
    """A page of whoever may take the data out."""

    does = Action.GIVE_OWN_DATA


class PortalDataPage(DataPage):
    template = "portal/data.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        farm = self.farm()
        wish = open_erasure(self.scope, farm)
        return self.show({"farm": farm, "counts": data_counts(self.scope, farm), "wish": wish})


class PortalDataCsv(DataPage):
    costs = {"get": Cost.EXPORT}

    def get(self, request: HttpRequest) -> HttpResponseBase:
        farm = self.farm()
        note_handed_out(row=farm, words="tables (CSV)", at=self.now)
        return zip_answer(
            self, csv_handed_over(self.scope, farm, self.now), file_name(self, farm, "tables", "zip")
        )


class PortalDataXlsx(DataPage):
    costs = {"get": Cost.EXPORT}

    def get(self, request: HttpRequest) -> HttpResponse:
        farm = self.farm()
        note_handed_out(row=farm, words="tables (spreadsheet)", at=self.now)
        content = workbook_handed_over(self.scope, farm, self.now)
        return file_answer(content, WORKBOOK, file_name(self, farm, "tables", "xlsx"))


class PortalDataAde(DataPage):
    """`?common=1` writes the property that is only proposed to the standard."""

    costs = {"get": Cost.EXPORT}

    def get(self, request: HttpRequest) -> HttpResponseBase:
        farm, common = self.farm(), request.GET.get("common") == "1"
        note_handed_out(row=farm, words="animal data (ICAR ADE)", at=self.now)
        files = ade_handed_over(self.scope, farm, self.now, common_procedure=common)
        return zip_answer(self, files, file_name(self, farm, "icar-ade", "zip"))


class PortalDataAll(DataPage):
    """All of it; that it was taken out is noted."""

    costs = {"post": Cost.EXPORT}

    def post(self, request: HttpRequest) -> HttpResponseBase:
        return hand_over(self, self.farm(), with_invoices=self.seat.allows(Action.READ_OWN_MONEY))


class ErasureForm(forms.Form):
    note = forms.CharField(
        label="A word to it", required=False, max_length=300, widget=forms.Textarea(attrs={"rows": 2})
    )


class PortalErasePage(DataPage):
    template = "portal/data_erase.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(ErasureForm())

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = ErasureForm(request.POST)
        if not form.is_valid():
            return self._show(form, 400)
        ask_erasure(farm=self.farm(), note=form.cleaned_data["note"], at=self.now, by=self.seat.user)
        messages.success(request, f"{self.seat.business} has your wish. Nothing is erased yet.")
        return redirect("portal_erase")

    def _show(self, form: ErasureForm, status: int = 200) -> HttpResponse:
        farm = self.farm()
        context = {"farm": farm, "form": form, "wish": open_erasure(self.scope, farm)}
        return self.show(context, status=status)


class PortalEraseWithdrawPage(DataPage):
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        withdraw_erasure(erasure=self.fetch(Erasure, pk), at=self.now)
        messages.success(request, "The wish is taken back; everything stays.")
        return redirect("portal_data")


def hand_over(page: ScopedPage, farm: Farm, *, with_invoices: bool) -> HttpResponseBase:
    """Everything of the farm as one zip; that it was taken is noted."""
    note_data_taken(farm=farm, at=page.now, by=page.seat.user)
    files = all_handed_over(page.scope, farm, page.now, with_invoices=with_invoices)
    return zip_answer(page, files, file_name(page, farm, "everything", "zip"))


def zip_answer(page: ScopedPage, files: Files, name: str) -> HttpResponseBase:
    """Packed into a file, not into memory, when the server asks for the first of it."""
    made_at = page.now.astimezone(page.seat.business.zone)
    answer = StreamingHttpResponse(_packed_in_pieces(files, made_at), content_type=ZIP)
    answer["Content-Disposition"] = f'attachment; filename="{name}"'
    answer["Cache-Control"] = "private, no-store"
    return answer


def _packed_in_pieces(files: Files, made_at: datetime) -> Iterator[bytes]:
    with tempfile.SpooledTemporaryFile(IN_MEMORY) as packed:
        pack_into(packed, files, made_at)
        packed.seek(0)
        while piece := packed.read(PIECE):
            yield piece


def file_name(page: ScopedPage, farm: Farm, what: str, ending: str) -> str:
    """Without the farm's name: a farm may bear signs that a header cannot."""
    return f"farm-{farm.pk}-{what}-{local_day(page.now, page.seat.business.zone)}.{ending}"
