"""PDFs of a visit: its report and the draft list."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.roles import EVERYONE
from trimops.kernel.errors import NotFound
from trimops.web.pdf_answer import pdf_answer
from trimops.web.scoped_page import ScopedPage
from visits.documents.draft_list import draft_list
from visits.documents.visit_report import visit_report
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.selectors.draft_content import draft_content
from visits.selectors.report_content import report_content


class VisitReportPaper(ScopedPage):
    """Of a finished visit only: what is not signed is no report."""

    roles = EVERYONE

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk, "farm", "business", "van__trimmer")
        if visit.visit_state is not VisitState.FINISHED:
            raise NotFound("The visit is not finished yet.")
        return pdf_answer(visit_report(report_content(visit)), f"visit-report-{visit.pk}")


class DraftListPaper(ScopedPage):
    roles = EVERYONE

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk, "farm", "business", "van")
        return pdf_answer(draft_list(draft_content(visit, self.now)), f"draft-list-{visit.pk}")
