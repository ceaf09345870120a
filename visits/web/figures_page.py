"""A business's own figures: minutes, days, marks for the claw, and what planning weighs."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.models import BusinessFigures
from visits.selectors.lengths_story import lengths_story
from visits.selectors.roads_story import roads_story
from visits.services.set_figures import FigureMakesNoSense, set_figures
from visits.web.figures_form import FiguresForm


class FiguresPage(ScopedPage):
    does = Action.KEEP_FIGURES
    template = "visits/figures.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._page(FiguresForm(own=BusinessFigures.objects.within(self.scope).first()))

    @transaction.atomic
    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = FiguresForm(request.POST, own=BusinessFigures.objects.within(self.scope).locked().first())
        if form.is_valid():
            try:
                set_figures(business=self.seat.business, figures=form.figures())
            except FigureMakesNoSense as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "Your figures are kept; new visits and plans go by them.")
                return redirect("figures")
        return self._page(form, status=form.refused_as)

    def _page(self, form: FiguresForm, status: int = 200) -> HttpResponse:
        business = self.seat.business
        told = {"roads": roads_story(business, self.now), "lengths": lengths_story(business)}
        return self.show({"form": form, **told}, status=status)
