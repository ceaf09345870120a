"""Mobility scores of a farm: brought in, and what the last rounds said. The farm's own page has the same base."""

from typing import ClassVar

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.web.scoped_page import ScopedPage
from visits.selectors.scoring_rounds import scoring_rounds
from visits.services.note_scores import note_scores
from visits.web.mobility_forms import ScoresForm


class ScoresPage(ScopedPage):
    """`address` is the name of its own address."""

    address: ClassVar[str] = ""

    def farm_of(self, **kwargs: int) -> Farm:
        """The farm that the address means."""
        raise NotImplementedError

    def get(self, request: HttpRequest, **kwargs: int) -> HttpResponse:
        farm = self.farm_of(**kwargs)
        today = local_day(self.now, self.seat.business.zone)
        first: dict[str, object] = {"scored_on": today, "scored_by": self.seat.user.name}
        return self._page(farm, ScoresForm(farm=farm, initial=first), 200)

    def post(self, request: HttpRequest, **kwargs: int) -> HttpResponseBase:
        farm = self.farm_of(**kwargs)
        form = ScoresForm(request.POST, request.FILES, farm=farm)
        if not form.is_valid():
            return self._page(farm, form, 400)
        try:
            note_scores(farm=farm, word=form.word(), at=self.now, by=self.seat.user)
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self._page(farm, form, 409)
        left = f", {len(form.faulty)} lines left out" if form.faulty else ""
        messages.success(request, f"{len(form.good)} scores are noted{left}.")
        return redirect(reverse(self.address, kwargs=kwargs))

    def _page(self, farm: Farm, form: ScoresForm, status: int) -> HttpResponse:
        words = {"farm": farm, "form": form, "rounds": scoring_rounds(farm)}
        return self.show({**words, "for_farm": self.seat.scope.is_farm_client}, status=status)


class MobilityPage(ScoresPage):
    """As staff see it."""

    does = Action.KEEP_COWS
    template = "visits/mobility.html"
    address = "mobility"

    def farm_of(self, **kwargs: int) -> Farm:
        return self.fetch(Farm, kwargs["farm_pk"], "business")
