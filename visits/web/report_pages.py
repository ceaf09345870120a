"""The issued report of a visit as a page, and the button that issues it."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage
from visits.models import Trim, Visit
from visits.selectors.issued_reports import newest_report, report_on_page
from visits.services.issue_letter import issue_letter
from visits.services.issue_report import issue_report

NOT_ISSUED = "The report of this visit has not been issued yet."


class ReportPage(ScopedPage):
    """What the newest version says, in the words of its PDF."""

    does = Action.KEEP_WORK
    template = "visits/report.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk, "farm")
        row = newest_report(self.scope, visit)
        if row is None:
            raise NotFound(NOT_ISSUED)
        return self.show({"visit": visit, "farm": visit.farm, "issued": row, **report_on_page(row)})


class IssueReportPage(ScopedPage):
    """The first version of a visit from before, or a new one when more has been noted since."""

    does = Action.KEEP_WORK

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        visit = self.fetch(Visit, pk)
        row = issue_report(visit=visit, at=self.now, by=self.seat.user)
        words = (
            "The report is issued." if row.version == 1 else f"Version {row.version} of the report is issued."
        )
        messages.success(request, f"{words} Whoever gets reports is told of it.")
        return redirect("visit", visit.pk)


class IssueLetterPage(ScopedPage):
    """The letter that hands a cow of the visit to the vet."""

    does = Action.KEEP_WORK

    def post(self, request: HttpRequest, pk: int, trim_pk: int) -> HttpResponseBase:
        visit = self.fetch(Visit, pk)
        trim = self.fetch_from(Trim.objects.within(self.scope).filter(visit=visit), trim_pk)
        letter = issue_letter(trim=trim, at=self.now, by=self.seat.user)
        version = "" if letter.version == 1 else f", version {letter.version},"
        messages.success(request, f"The letter to the vet{version} is ready to be printed or sent.")
        return redirect("visit", visit.pk)
