"""The sheet for a van's dashboard, as PDF."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from trimops.web.scoped_page import ScopedPage
from visits.documents.day_sheet import day_sheet
from visits.models import WeekPlan
from visits.selectors.day_sheet_content import day_sheet_content


class DaySheetPaper(ScopedPage):
    """Of one van's day in a plan; a plan that is only proposed says so across the page."""

    does = Action.SEE_WEEKS
    costs = {"get": Cost.PAPER}

    def get(self, request: HttpRequest, pk: int, shift: str) -> HttpResponse:
        plan = self.fetch(WeekPlan, pk, "business")
        return pdf_answer(day_sheet(day_sheet_content(plan, shift, self.now)), f"day-{shift}")
