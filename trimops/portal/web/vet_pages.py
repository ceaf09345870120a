"""The vet's desk: what a farm lets its vet see, by a secret link, without signing in."""

from dataclasses import replace
from datetime import datetime
from typing import ClassVar
from uuid import UUID

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import render
from django.utils import timezone
from django.views import View

from farms.models import Cow, Farm, VetPass
from farms.services.note_vet_opened import note_vet_opened
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from trimops.portal.selectors.vet_desk import (
    MOST_COWS,
    cows_for_vet,
    cows_found,
    reports_for_vet,
    vet_pass_of,
)
from trimops.web.asked import words_asked
from trimops.web.file_answer import picture_answer
from trimops.web.not_kept import NOT_KEPT
from trimops.web.pdf_answer import pdf_answer
from visits.models import Trim, TrimPhoto, Visit
from visits.selectors.cow_feet import cow_feet
from visits.selectors.herd_view import herd_view
from visits.selectors.issued_letters import newest_letter
from visits.selectors.issued_reports import newest_report


class VetPage(View):
    """Opens to whoever holds the secret of a pass that is open and shows this; rows are cut to its farm."""

    shows: ClassVar[str] = ""

    def dispatch(self, request: HttpRequest, *args: object, **kwargs: object) -> HttpResponseBase:
        self.secret = str(kwargs.pop("secret"))
        self.now: datetime = timezone.now()
        found = vet_pass_of(self.secret, self.now)
        answer = self._answer(request, found, kwargs)
        for name, value in NOT_KEPT.items():
            answer[name] = value
        return answer

    def _answer(
        self, request: HttpRequest, found: VetPass | None, named: dict[str, object]
    ) -> HttpResponseBase:
        if found is None:
            return render(request, "portal/vet_ended.html", status=404)
        self.vet_pass: VetPass = found
        self.scope = Scope(found.business_id, found.farm_id)
        try:
            if self.shows and not getattr(found, self.shows):
                raise NotFound("The farm does not show this.")
            with timezone.override(found.business.zone):
                return super().dispatch(request, **named)
        except NotFound:
            return self.show("portal/vet_nothing.html", {}, status=404)

    def farm(self) -> Farm:
        return Farm.objects.within(self.scope).select_related("business").get(pk=self.vet_pass.farm_id)

    def show(self, template: str, context: dict[str, object], status: int = 200) -> HttpResponse:
        known = {
            "vet_pass": self.vet_pass,
            "farm": self.vet_pass.farm,
            "business": self.vet_pass.business,
            "secret": self.secret,
            "today": local_day(self.now, self.vet_pass.business.zone),
        }
        return render(self.request, template, {**known, **context}, status=status)


class VetDeskPage(VetPage):
    def get(self, request: HttpRequest) -> HttpResponse:
        note_vet_opened(vet_pass=self.vet_pass, at=self.now)
        found = self.vet_pass
        asked = words_asked(request.GET, 30) if found.shows_cows else ""
        return self.show(
            "portal/vet_desk.html",
            {
                "for_vet": cows_for_vet(self.scope, self.now) if found.shows_letters else [],
                "reports": reports_for_vet(self.scope) if found.shows_reports else [],
                "asked": asked,
                "cows": cows_found(self.scope, asked),
                "most_cows": MOST_COWS,
            },
        )


class VetReportPaper(VetPage):
    shows = "shows_reports"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = Visit.objects.within(self.scope).filter(pk=pk).first()
        row = newest_report(self.scope, visit) if visit else None
        if row is None:
            raise NotFound("There is nothing at this address.")
        return pdf_answer(bytes(row.pdf), f"visit-report-{pk}-version-{row.version}")


class VetLetterPaper(VetPage):
    shows = "shows_letters"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        trim = Trim.objects.within(self.scope).filter(pk=pk).first()
        row = newest_letter(self.scope, trim) if trim else None
        if row is None:
            raise NotFound("There is nothing at this address.")
        return pdf_answer(bytes(row.pdf), f"letter-{pk}-version-{row.version}")


class VetCowPage(VetPage):
    shows = "shows_cows"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        cow = Cow.objects.within(self.scope).filter(pk=pk).first()
        if cow is None:
            raise NotFound("There is nothing at this address.")
        feet = cow_feet(self.scope, cow, self.now, request.GET.get("page"))
        photos = [(time.at, *photo) for time in feet.times for photo in time.photos]
        shown = photos if self.vet_pass.shows_photos else []
        return self.show("portal/vet_cow.html", {"cow": cow, "feet": feet, "photos": shown})


class VetPhotoPage(VetPage):
    shows = "shows_photos"

    def get(self, request: HttpRequest, uid: UUID) -> HttpResponse:
        rows = TrimPhoto.objects.within(self.scope).filter(uid=uid, trim__isnull=False)
        photo = rows.filter(trim__taken_back_at__isnull=True).first()
        if photo is None:
            raise NotFound("There is nothing at this address.")
        return picture_answer(bytes(photo.picture))


class VetHerdPage(VetPage):
    shows = "shows_figures"

    def get(self, request: HttpRequest) -> HttpResponse:
        # The yearly papers are behind sign-in.
        herd = replace(herd_view(self.scope, self.farm(), self.now), years=())
        return self.show("portal/vet_herd.html", {"herd": herd})
