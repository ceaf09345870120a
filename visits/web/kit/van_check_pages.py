"""The van the evening before: what tomorrow needs, what is in it, what to put in."""

from datetime import date, timedelta

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.kernel.errors import RuleBroken
from trimops.paper.figures import counted
from visits.domain.kit.cold_day import weather_words
from visits.models import Van
from visits.selectors.kit.van_check import VanCheck, days_with_visits, said_of, van_check
from visits.services.kit.load_van import LoadedMeanwhile, load_van
from visits.services.kit.stock_word import MoreThanIsThere
from visits.services.kit.type_weather import type_weather
from visits.web.kit.load_form import LoadForm, WeatherForm
from visits.web.kit.stock_pages import StockPage

FURTHEST = timedelta(days=366)


class CheckedVanPage(StockPage):
    """`?day=` names another day than the van's next one with visits."""

    template = "visits/kit/van_check.html"

    def check(self, pk: int) -> VanCheck:
        return van_check(self.scope, self.fetch(Van, pk, "business"), self._day(), self.today)

    def page(self, check: VanCheck, form: LoadForm, weather: WeatherForm, status: int) -> HttpResponse:
        shown: dict[str, object] = {
            "check": check,
            "form": form,
            "weather_form": weather,
            "weather_words": weather_words(said_of(check.weather)) if check.weather else "",
            "may_type": self.seat.allows(Action.COUNT_KIT),
            "others": Van.objects.within(self.scope).filter(is_active=True).exclude(pk=check.van.pk),
            "sure_percent": int(check.sure * 100),
            "next_days": [day for day in days_with_visits(check.van, self.today) if day != check.day],
        }
        return self.show(shown, status=status)

    def back(self, check: VanCheck) -> HttpResponseBase:
        address = reverse("kit_van_check", args=[check.van.pk])
        return redirect(f"{address}?day={check.day}" if check.day else address)

    def weather_form(self, check: VanCheck) -> WeatherForm:
        typed = check.weather
        first = {"lowest": typed.lowest_celsius, "highest": typed.highest_celsius} if typed else {}
        return WeatherForm(initial=first)

    def _day(self) -> date | None:
        """The day asked for; None where there is none that can be read, it is over, or nobody plans so far ahead."""
        try:
            day = date.fromisoformat(self.request.GET.get("day", ""))
        except ValueError:
            return None
        return day if self.today <= day <= self.today + FURTHEST else None


class VanCheckPage(CheckedVanPage):
    does = Action.SEE_KIT

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        check = self.check(pk)
        return self.page(check, LoadForm(check, self.scope), self.weather_form(check), 200)


class LoadPage(CheckedVanPage):
    """Loaded as listed, or as the list was mended."""

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        check = self.check(pk)
        form = LoadForm(check, self.scope, request.POST)
        weather = self.weather_form(check)
        if not form.is_valid() or check.day is None:
            return self.page(check, form, weather, 400)
        load = form.load(check.day)
        if not load.loads:
            form.add_error(None, "Write how much is put in beside at least one line.")
            return self.page(check, form, weather, 400)
        try:
            load_van(van=check.van, load=load, word=self.word(form, self.now))
        except LoadedMeanwhile as fault:
            messages.error(request, fault.message)
            return self.back(check)
        except RuleBroken as fault:
            form.refuse(fault, is_about_stock=isinstance(fault, MoreThanIsThere))
            return self.page(check, form, weather, 409)
        messages.success(request, f"{counted(len(load.loads), 'thing')} put into {check.van}.")
        return self.back(check)


class WeatherPage(CheckedVanPage):
    """The day's forecast is typed."""

    does = Action.COUNT_KIT

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        check = self.check(pk)
        weather = WeatherForm(request.POST)
        form = LoadForm(check, self.scope)
        if not weather.is_valid() or check.day is None:
            return self.page(check, form, weather, 400)
        try:
            type_weather(
                business=self.seat.business,
                day=check.day,
                weather=weather.weather(),
                at=self.now,
                by=self.seat.user,
            )
        except RuleBroken as fault:
            weather.add_error(None, fault.message)
            return self.page(check, form, weather, 409)
        messages.success(request, f"The forecast of {check.day:%A} is noted.")
        return self.back(check)
