"""The farms, one farm, and mending what is known of it."""

from django.contrib import messages
from django.core.paginator import Paginator
from django.db import transaction
from django.db.models import Count, Q
from django.db.models.functions import Length
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Contact, Cow, Farm, HygieneChange, Milking
from farms.selectors.erasures import open_erasure
from farms.services.save_farm import save_farm
from farms.services.set_milkings import DailyMilking, set_milkings
from farms.web.forms import FarmForm, FindForm, MilkingForm
from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 40


class FarmListPage(ScopedPage):
    does = Action.SEE_EVERY_FARM
    template = "farms/farm_list.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        form = FindForm(request.GET)
        text = form.cleaned_data["q"] if form.is_valid() else ""
        on_farm = Q(cows__status__in=["milking", "dry", "heifer", "bull"])
        farms = Farm.objects.within(self.scope).active().named_like(text)
        farms = farms.annotate(cows_listed=Count("cows", filter=on_farm)).order_by("name")
        page = Paginator(farms, PER_PAGE).get_page(request.GET.get("page"))
        return self.show({"form": form, "page": page, "q": text})


class FarmPage(ScopedPage):
    does = Action.SEE_EVERY_FARM
    template = "farms/farm.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        farm = self.fetch(Farm, pk, "payer", "business")
        form = FindForm(request.GET)
        text = form.cleaned_data["q"] if form.is_valid() else ""
        cows = Cow.objects.within(self.scope).on_farm().filter(farm=farm)
        found = (cows.known_as(text) if text else cows).order_by(Length("number"), "number", "id")
        return self.show(
            {
                "farm": farm,
                "form": form,
                "q": text,
                "page": Paginator(found, PER_PAGE).get_page(request.GET.get("page")),
                "contacts": Contact.objects.within(self.scope).filter(farm=farm),
                "milkings": Milking.objects.within(self.scope).filter(farm=farm, weekday=0),
                "hygiene_changes": HygieneChange.objects.within(self.scope).filter(farm=farm)[:5],
                "wish": open_erasure(self.scope, farm),
            }
        )


class FarmEditPage(ScopedPage):
    """A new farm (no key) or a known one."""

    does = Action.KEEP_FARMS
    template = "farms/farm_edit.html"

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        farm = self._farm(pk)
        return self.show({"farm": farm, "form": FarmForm(instance=farm, scope=self.scope)})

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponseBase:
        farm = self._farm(pk)
        farm = farm.locked() if farm.pk else farm
        form = FarmForm(request.POST, instance=farm, scope=self.scope)
        if not form.is_valid():
            return self.show({"farm": farm, "form": form}, status=form.refused_as)
        save_farm(farm=form.instance, at=self.now, by=self.seat.user)
        messages.success(request, f"{farm.name} is kept.")
        return redirect("farm", farm.pk)

    def _farm(self, pk: int | None) -> Farm:
        return self.fetch(Farm, pk) if pk else Farm(business=self.seat.business)


class MilkingPage(ScopedPage):
    does = Action.KEEP_FARMS
    template = "farms/milking.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        farm = self.fetch(Farm, pk)
        return self.show({"farm": farm, "form": MilkingForm(initial=self._kept(farm))})

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, pk).locked()
        form = MilkingForm(request.POST, initial=self._kept(farm))
        if not form.is_valid():
            return self.show({"farm": farm, "form": form}, status=form.refused_as)
        times = sorted({form.cleaned_data[name] for name in ("first", "second", "third")} - {None})
        set_milkings(farm=farm, milkings=[DailyMilking(at, form.cleaned_data["minutes"]) for at in times])
        messages.success(request, "Milking times are kept; the next plan goes by them.")
        return redirect("farm", farm.pk)

    def _kept(self, farm: Farm) -> dict[str, object]:
        rows = list(Milking.objects.within(self.scope).filter(farm=farm, weekday=0))
        names = ("first", "second", "third")
        times = {name: row.starts for name, row in zip(names, rows, strict=False)}
        return {**times, "minutes": rows[0].minutes if rows else 150}
