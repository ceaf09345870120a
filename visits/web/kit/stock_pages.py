"""What comes and goes, put down: bought, moved, written off."""

from datetime import date, datetime, time

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.errors import RuleBroken
from trimops.paper.figures import counted
from trimops.web.asked import number_asked
from trimops.web.scoped_page import ScopedPage
from visits.domain.kit.stock_kinds import WriteOffReason
from visits.models import Consumable, StockPlace
from visits.selectors.kit.lots_left import LotsAt, lots_left
from visits.selectors.kit.stock_now import stock_now
from visits.services.kit.buy_stock import buy_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_places import stock_places_of
from visits.services.kit.stock_word import Amount, MoreThanIsThere, StockWord
from visits.services.kit.write_off_stock import write_off_stock
from visits.web.kit.bought_form import BoughtForm
from visits.web.kit.stock_forms import MovedForm, StockForm, WayForm, WrittenOffForm

MIDDAY = time(12)


class StockPage(ScopedPage):
    """What these pages share."""

    does = Action.KEEP_KIT

    @property
    def today(self) -> date:
        return local_day(self.now, self.seat.business.zone)

    def word(self, form: StockForm, at: datetime) -> StockWord:
        """What the form says of itself, once it is valid."""
        return StockWord(at, self.now, self.seat.user, form.uid_said, form.cleaned_data["note"])


class BoughtPage(StockPage):
    """A delivery. `?item=` names what is bought."""

    template = "visits/kit/bought.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        store, *_ = stock_places_of(self.scope)
        first: dict[str, object] = {"bought_on": self.today, "place": store}
        key = number_asked(request.GET.get("item"))
        if key is not None:
            item = self.fetch(Consumable, key)
            first |= {"item_0": str(item.pk), "quantity_0": item.pack, "cost_0": item.price}
            first |= {"supplier": item.supplier}
        return self.show({"form": BoughtForm(scope=self.scope, initial=first)})

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = BoughtForm(request.POST, scope=self.scope)
        if not form.is_valid():
            return self.show({"form": form}, status=400)
        told = form.cleaned_data
        bought = form.lines()
        try:
            buy_stock(
                place=told["place"],
                bought=bought,
                word=self.word(form, self._moment(told["bought_on"])),
                supplier=told["supplier"],
            )
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self.show({"form": form}, status=409)
        messages.success(request, f"{counted(len(bought), 'line')} bought; it lies in {told['place']}.")
        return redirect("kit")

    def _moment(self, day: date) -> datetime:
        """Today: now. Else midday, before which nobody has used it."""
        return self.now if day == self.today else at_local(day, MIDDAY, self.seat.business.zone)


class MovedPage(StockPage):
    """From one place to another; `?from=` and `?to=` name them, `?item=` is shown first."""

    template = "visits/kit/moved.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._page(self._way(), None, 200)

    def post(self, request: HttpRequest) -> HttpResponseBase:
        way = self._way()
        form = self._form(way, request)
        if not form.is_valid():
            return self._page(way, form, 400)
        moved = [Amount(item, amount) for item, amount in form.amounts().items()]
        try:
            move_stock(
                way=way,
                moved=moved,
                word=self.word(form, form.moment(self.now)),
                is_really_there=bool(form.cleaned_data["is_really_there"]),
            )
        except RuleBroken as fault:
            form.refuse(fault, is_about_stock=isinstance(fault, MoreThanIsThere))
            return self._page(way, form, 409)
        said = counted(len(moved), "consumable")
        messages.success(request, f"{said} moved from {way.source} to {way.target}.")
        return redirect("kit")

    def _way(self) -> Way:
        """From the store to the first van where nothing is asked."""
        first, *others = stock_places_of(self.scope)
        return Way(self._place("from", first), self._place("to", next(iter(others), first)))

    def _place(self, name: str, usual: StockPlace) -> StockPlace:
        """The one asked for, of a van out of use too, else `NotFound`: nothing is booked at another in its stead."""
        asked = self.request.GET.get(name)
        return self.fetch(StockPlace, number_asked(asked) or 0, "van") if asked else usual

    def _form(self, way: Way, request: HttpRequest | None = None) -> MovedForm:
        stock = {item.consumable.pk: item.at(way.source.pk).balance for item in stock_now(self.scope)}
        return MovedForm(request.POST if request else None, scope=self.scope, there=stock)

    def _page(self, way: Way, form: MovedForm | None, status: int) -> HttpResponse:
        asked = WayForm(scope=self.scope, initial={"from": way.source, "to": way.target})
        told = {"way": way, "asked": asked, "form": form or self._form(way)}
        return self.show({**told, "is_same": way.source == way.target}, status=status)


class WrittenOffPage(StockPage):
    """`?item=`, `?place=` and `?lot=` fill it in for a lot that is past its date."""

    template = "visits/kit/written_off.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        store, *_ = stock_places_of(self.scope)
        asked = {name: number_asked(request.GET.get(name)) for name in ("item", "place", "lot")}
        item = self.fetch(Consumable, asked["item"]) if asked["item"] else None
        lots = lots_left(self.scope, item) if item else ()
        first: dict[str, object] = {"place": asked["place"] or store.pk, "item": asked["item"]}
        for each in lots:
            if each.lot and each.lot.pk == asked["lot"] and each.place == asked["place"]:
                first |= {"lot": each.lot.pk, "quantity": each.quantity}
                if each.lot.expires_on and each.lot.expires_on < self.today:
                    first["because"] = WriteOffReason.EXPIRED.value
        return self._page(self._form(lots, initial=first), item, 200)

    def post(self, request: HttpRequest) -> HttpResponseBase:
        key = number_asked(request.POST.get("item"))
        item = self.fetch(Consumable, key) if key else None
        lots = lots_left(self.scope, item) if item else ()
        form = self._form(lots, data=request.POST)
        if not form.is_valid():
            return self._page(form, item, 400)
        told = form.cleaned_data
        place: StockPlace = told["place"]
        try:
            write_off_stock(
                place=place,
                gone=[Amount(told["item"], told["quantity"], told.get("lot"))],
                because=WriteOffReason(told["because"]),
                word=self.word(form, form.moment(self.now)),
                is_really_there=bool(told["is_really_there"]),
            )
        except RuleBroken as fault:
            form.refuse(fault, is_about_stock=isinstance(fault, MoreThanIsThere))
            return self._page(form, item, 409)
        messages.success(request, f"{told['item']} is written off at {place}.")
        return redirect("kit_item", told["item"].pk)

    def _form(
        self,
        lots: LotsAt,
        *,
        data: QueryDict | None = None,
        initial: dict[str, object] | None = None,
    ) -> WrittenOffForm:
        known = {each.lot.pk for each in lots if each.lot}
        return WrittenOffForm(data, scope=self.scope, initial=initial, lots=known)

    def _page(self, form: WrittenOffForm, item: Consumable | None, status: int) -> HttpResponse:
        return self.show({"form": form, "item": item}, status=status)
