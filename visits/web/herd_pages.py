"""One herd's feet over the years: the page for the business, and the yearly paper for it and the farm."""

from django.http import HttpRequest, HttpResponse

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from trimops.web.scoped_page import ScopedPage
from visits.documents.herd_year import herd_year
from visits.selectors.herd_view import herd_view, herd_year_story


class HerdFiguresPage(ScopedPage):
    """At most six pictures, each with its finding, and the rest in short tables."""

    does = Action.SEE_EVERY_FARM
    template = "visits/herd_figures.html"

    def get(self, request: HttpRequest, farm_pk: int) -> HttpResponse:
        farm = self.fetch(Farm, farm_pk, "business")
        return self.show({"farm": farm, "herd": herd_view(self.scope, farm, self.now)})


class HerdYearPaper(ScopedPage):
    """The same of one calendar year, as a PDF."""

    does = Action.SEE_WORK
    costs = {"get": Cost.PAPER}

    def get(self, request: HttpRequest, farm_pk: int, year: int) -> HttpResponse:
        farm = self.fetch(Farm, farm_pk, "business")
        story = herd_year_story(self.scope, farm, year, self.now)
        return pdf_answer(herd_year(story), f"herd-feet-{farm.pk}-{year}")
