"""Putting a cow down at the crush, by the plain form."""

import uuid

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Cow
from trimops.web.scoped_page import ScopedPage
from visits.domain.cautions import BELLY_BAND, BLOOD
from visits.domain.trim_doubts import doubts
from visits.models import Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.crush_list import crush_list
from visits.services.record_trim import CrushRecord, EntryContradicts, record_trim
from visits.web.crush_form import CrushForm
from visits.web.forms import FindForm
from visits.web.visit_steps import AT_THE_CRUSH


class CrushListPage(ScopedPage):
    """Which cow is in the crush? Those asked for first, then any of the farm by number."""

    roles = AT_THE_CRUSH
    template = "visits/crush_list.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk, "farm", "business")
        form = FindForm(request.GET)
        text = form.cleaned_data["q"] if form.is_valid() else ""
        found = Cow.objects.within(self.scope).on_farm().filter(farm_id=visit.farm_id)
        cows = list(found.known_as(text)[:20]) if text else []
        lines = crush_list(self.scope, visit)
        done = sum(line.is_done for line in lines)
        return self.show(
            {
                "visit": visit,
                "farm": visit.farm,
                "form": form,
                "q": text,
                "cows": cows,
                "lines": lines,
                "done": done,
            }
        )


class CrushCowPage(ScopedPage):
    """One cow: kept on the first press; what looks odd is asked once and kept on the second."""

    roles = AT_THE_CRUSH
    template = "visits/crush_cow.html"

    def get(self, request: HttpRequest, pk: int, cow_pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk, "farm", "business")
        return self._show(visit, self._cow(visit, cow_pk), CrushForm(), [])

    def post(self, request: HttpRequest, pk: int, cow_pk: int) -> HttpResponseBase:
        visit = self.fetch(Visit, pk, "farm", "business")
        cow = self._cow(visit, cow_pk)
        form = CrushForm(request.POST)
        if not form.is_valid():
            return self._show(visit, cow, form, [], 400)
        odd = [doubt.text for doubt in doubts(form.entry(), figures_of(self.scope).trim)]
        if odd and request.POST.get("sure") != "yes":
            return self._show(visit, cow, form, odd)
        record = CrushRecord(cow, form.entry(), uuid.uuid4(), self.now, form.cleaned_data["told_vet"])
        try:
            record_trim(visit=visit, record=record, by=self.seat.user)
        except EntryContradicts as fault:
            form.add_error(None, fault.message)
            return self._show(visit, cow, form, [], 409)
        messages.success(request, f"Cow {cow.number} is put down.")
        return redirect("crush", visit.pk)

    def _cow(self, visit: Visit, cow_pk: int) -> Cow:
        return self.fetch_from(Cow.objects.filter(farm_id=visit.farm_id), cow_pk)

    def _show(
        self, visit: Visit, cow: Cow, form: CrushForm, odd: list[str], status: int = 200
    ) -> HttpResponse:
        cautions = (BELLY_BAND, BLOOD)
        return self.show(
            {"visit": visit, "cow": cow, "form": form, "odd": odd, "cautions": cautions}, status=status
        )
