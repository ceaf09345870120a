"""A place is counted: all of it on one page, a number beside each thing.

What the ledger says is folded away until one asks for it: who sees a figure tends to find it. Afterwards both figures
are shown, with what differs first.
"""

from uuid import UUID

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.kernel.errors import RuleBroken
from visits.models import StockPlace
from visits.selectors.kit.count_result import count_result
from visits.selectors.kit.stock_now import stock_now
from visits.services.kit.count_stock import count_stock
from visits.services.kit.stock_places import stock_places_of
from visits.services.kit.stock_word import Amount
from visits.web.kit.stock_forms import CountForm
from visits.web.kit.stock_pages import StockPage


class CountPage(StockPage):
    """`?counted=` names a form that was sent: what it found."""

    does = Action.COUNT_KIT
    template = "visits/kit/count.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        place = self.fetch(StockPlace, pk)
        asked = _uid(request.GET.get("counted", ""))
        found = count_result(self.scope, place.pk, asked) if asked else []
        if found:
            differ = [each for each in found if each.missing]
            return self.show(
                {"place": place, "found": found, "differ": differ, "others": self._others(place)}
            )
        return self._page(place, self._form(place), 200)

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        place = self.fetch(StockPlace, pk)
        form = self._form(place, request)
        if not form.is_valid():
            return self._page(place, form, 400)
        counted = [Amount(item, amount) for item, amount in form.amounts().items()]
        try:
            count_stock(place=place, counted=counted, word=self.word(form, form.moment(self.now)))
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self._page(place, form, 409)
        return redirect(reverse("kit_count", args=[pk]) + f"?counted={form.uid_said}")

    def _form(self, place: StockPlace, request: HttpRequest | None = None) -> CountForm:
        stock = {item.consumable.pk: item.at(place.pk).balance for item in stock_now(self.scope)}
        return CountForm(request.POST if request else None, scope=self.scope, there=stock)

    def _page(self, place: StockPlace, form: CountForm, status: int) -> HttpResponse:
        return self.show({"place": place, "form": form, "others": self._others(place)}, status=status)

    def _others(self, place: StockPlace) -> list[StockPlace]:
        return [each for each in stock_places_of(self.scope) if each != place]


def _uid(text: str) -> UUID | None:
    try:
        return UUID(text)
    except ValueError:
        return None
