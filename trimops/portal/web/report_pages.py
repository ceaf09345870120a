"""The reports of the farm's visits, as they left the house."""

from django.core.paginator import Paginator
from django.db.models import Exists, OuterRef
from django.db.models.functions import Length
from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from trimops.portal.web.client_page import ClientPage
from visits.domain.visit_states import VisitState
from visits.models import IssuedReport, Trim, Visit
from visits.selectors.issued_letters import cows_for_vet
from visits.selectors.issued_reports import newest_report, report_on_page

PER_PAGE = 30


class PortalReportsPage(ClientPage):
    """Finished visits, the newest first."""

    does = Action.READ_OWN_REPORTS
    template = "portal/reports.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        issued = IssuedReport.objects.within(self.scope).filter(visit_id=OuterRef("pk"))
        rows = Visit.objects.within(self.scope).in_state(VisitState.FINISHED).order_by("-finished_at")
        page = Paginator(rows.annotate(is_issued=Exists(issued)), PER_PAGE)
        return self.show({"farm": self.farm(), "page": page.get_page(request.GET.get("page"))})


class PortalReportPage(ClientPage):
    """The newest version, in the words of its PDF; of a visit whose report is not out yet that it is not."""

    does = Action.READ_OWN_REPORTS
    template = "portal/report.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        finished = Visit.objects.within(self.scope).in_state(VisitState.FINISHED).select_related("farm")
        visit = self.fetch_from(finished, pk)
        row = newest_report(self.scope, visit)
        said = report_on_page(row) if row is not None else {}
        trims = Trim.objects.within(self.scope).filter(visit=visit).select_related("cow")
        return self.show(
            {
                "visit": visit,
                "farm": visit.farm,
                "issued": row,
                "letters": [each for each in cows_for_vet(self.scope, visit) if each.letter],
                "cows": [trim.cow for trim in trims.order_by(Length("cow__number"), "cow__number")],
                "earlier": range(row.version - 1, 0, -1) if row is not None else (),
                **said,
            }
        )
