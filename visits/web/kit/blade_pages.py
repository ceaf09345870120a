"""Knives and discs: all of a van, one of them, a new one, what becomes of it."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import FieldRefused
from trimops.web.asked import number_asked
from trimops.web.scoped_page import ScopedPage
from visits.domain.kit.blade_cautions import SHARPENING, at_work_words, broken_words
from visits.domain.kit.blade_kinds import BladeKind
from visits.models import Blade, Van
from visits.selectors.kit.blade_list import blade_places
from visits.selectors.kit.blade_standing import open_faults_of
from visits.selectors.kit.blade_story import blade_story
from visits.services.kit.change_blade_state import change_blade_state
from visits.services.kit.save_blade import save_blade
from visits.web.kit.blade_forms import BevelForm, BladeForm, BladeStateForm

FIRST_BEVEL = {"thickness": "2.2", "angle": "20"}


class BladesPage(ScopedPage):
    """All blades of a van; `?van=` chooses another. The bevel helper is asked by the same address."""

    does = Action.SEE_KNIVES
    template = "visits/kit/blades.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        van = number_asked(request.GET.get("van"))
        asks = "thickness" in request.GET
        bevel = BevelForm(request.GET if asks else FIRST_BEVEL)
        places = blade_places(self.scope, self.seat.business, self.now, van, self.seat.user.pk)
        context = {
            "places": places,
            "list": places.chosen,
            "bevel": bevel,
            "asks_bevel": asks,
            "may_write": self.seat.allows(Action.KEEP_KNIVES),
            "cautions": (*SHARPENING, at_work_words(BladeKind.GRINDER_DISC)),
        }
        return self.show(context)


class BladePage(ScopedPage):
    does = Action.SEE_KNIVES
    template = "visits/kit/blade.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        blade = self.fetch(Blade, pk, "van", "business")
        story = blade_story(self.scope, blade, self.now)
        kind = BladeKind(blade.kind)
        broken = broken_words(kind) if story.mark[0] == "urgent" else ""
        context = {"story": story, "blade": blade, "may_write": self.seat.allows(Action.KEEP_KNIVES)}
        return self.show(
            {**context, "broken": broken, "at_work": at_work_words(kind), "is_turned": kind.is_turned}
        )


class BladeEditPage(ScopedPage):
    """A new blade, or a known one."""

    does = Action.KEEP_KNIVES
    template = "visits/kit/blade_edit.html"

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        blade = self._blade(pk)
        return self.show({"blade": blade, "form": BladeForm(instance=blade)})

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponseBase:
        blade = self._blade(pk)
        blade = blade.locked() if blade.pk else blade
        form = BladeForm(request.POST, instance=blade)
        if not form.is_valid():
            return self.show({"blade": blade, "form": form}, status=form.refused_as)
        was_used = bool(form.cleaned_data.get("was_used"))
        try:
            save_blade(blade=form.instance, was_used=was_used, at=self.now, by=self.seat.user)
        except FieldRefused as fault:
            form.add_error(fault.field, fault.message)
            return self.show({"blade": blade, "form": form}, status=409)
        messages.success(request, f"“{blade.name}” is kept.")
        return redirect("blade", blade.pk)

    def _blade(self, pk: int | None) -> Blade:
        if pk:
            return self.fetch(Blade, pk, "business")
        today = local_day(self.now, self.seat.business.zone)
        return Blade(business=self.seat.business, van=self._likely_van(), bought_on=today)

    def _likely_van(self) -> Van | None:
        """The van of `?van=`, else the one that the person drives."""
        wish = number_asked(self.request.GET.get("van"))
        rows = Van.objects.within(self.scope)
        named = rows.filter(pk=wish).first() if wish else None
        return named or rows.filter(is_active=True, trimmer=self.seat.user).first()


class BladeStatePage(ScopedPage):
    """What becomes of a blade."""

    does = Action.KEEP_KNIVES
    template = "visits/kit/blade_state.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        blade = self.fetch(Blade, pk, "business")
        return self._page(blade, self._form(blade), 200)

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        blade = self.fetch(Blade, pk, "business")
        form = self._form(blade)
        if not form.is_valid():
            return self._page(blade, form, 400)
        try:
            row = change_blade_state(blade=blade, word=form.word(), at=self.now, by=self.seat.user)
        except FieldRefused as fault:
            form.add_error(fault.field, fault.message)
            return self._page(blade, form, 409)
        messages.success(request, f"“{row.name}”: {row.get_state_display().lower()}.")
        return redirect("blade", row.pk)

    def _form(self, blade: Blade) -> BladeStateForm:
        data = self.request.POST if self.request.method == "POST" else None
        first: dict[str, object] = {"state": blade.state, "fault": blade.fault}
        faults = open_faults_of(blade)
        return BladeStateForm(data, kind=BladeKind(blade.kind), open_faults=faults, initial=first)

    def _page(self, blade: Blade, form: BladeStateForm, status: int) -> HttpResponse:
        words = broken_words(BladeKind(blade.kind))
        return self.show({"blade": blade, "form": form, "broken": words}, status=status)
