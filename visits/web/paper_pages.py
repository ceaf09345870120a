"""PDFs of a visit: its report as it was issued, the letters to the vet, the draft list."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from trimops.kernel.errors import NotFound
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from trimops.web.scoped_page import ScopedPage
from visits.documents.draft_list import draft_list
from visits.models import IssuedReport, Trim, Visit
from visits.selectors.draft_content import draft_content
from visits.selectors.issued_letters import newest_letter
from visits.selectors.issued_reports import newest_report, report_of_version


class VisitReportPaper(ScopedPage):
    """The newest version, byte by byte as it was issued."""

    does = Action.SEE_WORK

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk)
        row = newest_report(self.scope, visit)
        if row is None:
            raise NotFound("The report of this visit has not been issued yet.")
        return _report_answer(visit, row)


class VisitReportVersionPaper(ScopedPage):
    """A version from before."""

    does = Action.SEE_WORK

    def get(self, request: HttpRequest, pk: int, version: int) -> HttpResponse:
        visit = self.fetch(Visit, pk)
        row = report_of_version(self.scope, visit, version)
        if row is None:
            raise NotFound("There is nothing at this address.")
        return _report_answer(visit, row)


class ReferralLetterPaper(ScopedPage):
    """The newest letter to the vet about one cow of the visit."""

    does = Action.SEE_WORK

    def get(self, request: HttpRequest, pk: int, trim_pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk)
        trim = self.fetch_from(Trim.objects.within(self.scope).filter(visit=visit), trim_pk)
        row = newest_letter(self.scope, trim)
        if row is None:
            raise NotFound("The letter about this cow has not been issued yet.")
        return pdf_answer(bytes(row.pdf), f"letter-{visit.pk}-{trim.pk}-version-{row.version}")


class DraftListPaper(ScopedPage):
    does = Action.SEE_VISITS
    costs = {"get": Cost.PAPER}

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk, "farm", "business", "van")
        return pdf_answer(draft_list(draft_content(visit, self.now)), f"draft-list-{visit.pk}")


def _report_answer(visit: Visit, row: IssuedReport) -> HttpResponse:
    return pdf_answer(bytes(row.pdf), f"visit-report-{visit.pk}-version-{row.version}")
