"""Letting the vet in: for people of the farm with that right, and for the business on their behalf."""

from typing import ClassVar

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.debug import sensitive_variables

from farms.models import Farm, VetPass
from farms.selectors.vet_passes import is_still_given
from farms.services.close_vet_pass import close_vet_pass
from farms.services.give_vet_pass import give_vet_pass, mail_vet_pass
from trimops.accounts.actions import Action
from trimops.kernel.errors import NotFound
from trimops.portal.web.farm_seat import refuse_form_of_other_farm
from trimops.portal.web.vet_forms import SHOWS, VetPassForm
from trimops.web.scoped_page import ScopedPage

FIRST = {"shows": ["shows_letters", "shows_reports"], "days": 30}


class _VetPasses(ScopedPage):
    """The farm's links for its vet: those that are open, and giving one more."""

    template = "portal/vet_passes.html"
    close_name: ClassVar[str] = ""
    back_name: ClassVar[str] = ""

    def farm_of(self, pk: int | None) -> Farm:
        """The farm of the address, or that of the client's own seat."""
        key = self.scope.farm_id if pk is None else pk
        if key is None:
            raise NotFound("There is nothing at this address.")
        farm = self.fetch(Farm, key, "business")
        refuse_form_of_other_farm(self.request, farm)
        return farm

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        return self._show(self.farm_of(pk), VetPassForm(initial=FIRST))

    @sensitive_variables("made", "address")
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        farm, form = self.farm_of(pk), VetPassForm(request.POST)
        if not form.is_valid():
            return self._show(farm, form, status=400)
        made = give_vet_pass(farm=farm, word=form.word(), at=self.now, by=self.seat.user)
        address = request.build_absolute_uri(reverse("vet_desk", args=[made.secret]))
        mail_vet_pass(vet_pass=made.row, address=address, at=self.now)
        answer = self._show(farm, VetPassForm(initial=FIRST), made.row, address)
        answer["Cache-Control"] = "no-store"
        return answer

    def _show(
        self, farm: Farm, form: VetPassForm, made: VetPass | None = None, address: str = "", status: int = 200
    ) -> HttpResponse:
        rows = VetPass.objects.within(self.scope).filter(farm=farm, closed_at__isnull=True)
        stand = filter(is_still_given, rows.filter(expires_at__gt=self.now))
        found = [(row, _words(row)) for row in stand]
        context = {"farm": farm, "passes": found, "form": form, "made": made, "new_address": address}
        return self.show(
            {**context, "close_name": self.close_name, "back_name": self.back_name}, status=status
        )


class PortalVetPage(_VetPasses):
    does = Action.GIVE_OWN_DATA
    close_name, back_name = "portal_vet_close", "portal_home"


class VetPassesPage(_VetPasses):
    does = Action.LET_IN_VETS
    close_name, back_name = "vet_pass_close", "farm"


class PortalVetClosePage(ScopedPage):
    does = Action.GIVE_OWN_DATA

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        _close(self, pk)
        return redirect("portal_vet")


class VetPassClosePage(ScopedPage):
    does = Action.LET_IN_VETS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        return redirect("vet_passes", _close(self, pk).farm_id)


def _close(page: ScopedPage, pk: int) -> VetPass:
    row = close_vet_pass(vet_pass=page.fetch(VetPass, pk), at=page.now)
    messages.success(page.request, f"The link of {row.vet_name} is closed; it opens nothing any more.")
    return row


def _words(row: VetPass) -> str:
    """What the pass shows, in a few words."""
    few = {"shows_letters": "letters", "shows_reports": "reports", "shows_cows": "cows' feet"}
    few |= {"shows_photos": "photos", "shows_figures": "herd figures"}
    return ", ".join(few[name] for name, _ in SHOWS if getattr(row, name))
