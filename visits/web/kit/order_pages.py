"""Orders: what to order and why, what is on its way, what came of one."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.errors import RuleBroken
from trimops.paper.figures import counted
from visits.domain.kit.order_text import OrderedLine, mail_address, order_text
from visits.domain.kit.stock_kinds import Unit
from visits.models import SupplyLine, SupplyOrder
from visits.selectors.kit.order_list import OrderList, closed_orders, order_list
from visits.services.kit.call_off_order import call_off_order
from visits.services.kit.place_order import place_order
from visits.services.kit.receive_supply import receive_supply
from visits.services.kit.stock_word import StockWord
from visits.web.kit.arrived_form import ArrivedForm, CallOffForm
from visits.web.kit.order_form import SupplierForm
from visits.web.kit.stock_pages import MIDDAY, StockPage


@dataclass(frozen=True)
class OrderDraft:
    """A supplier's part of the list, and its order as text."""

    form: SupplierForm
    text: str
    mail: str

    @property
    def text_rows(self) -> int:
        return len(self.text.split("\n"))


class ListPage(StockPage):
    """The list: a part for each supplier, each its own form."""

    template = "visits/kit/orders.html"

    def page(self, told: OrderList, typed: SupplierForm | None, status: int) -> HttpResponse:
        """`typed`: the form that was sent, with what is to be mended."""
        forms = self.forms(told)
        if typed is not None:
            forms[typed.number] = typed
        drafts = [self._draft(form) for form in forms]
        shown: dict[str, object] = {"list": told, "typed": typed, "closed": closed_orders(self.scope)}
        shown["drafts"] = [draft for draft in drafts if draft.form.rows_today or draft.form.rows_soon]
        shown["others"] = [draft for draft in drafts if not (draft.form.rows_today or draft.form.rows_soon)]
        return self.show(shown, status=status)

    def forms(self, told: OrderList, request: HttpRequest | None = None) -> list[SupplierForm]:
        data = request.POST if request else None
        return [SupplierForm(each, told.seen, number, data) for number, each in enumerate(told.suppliers)]

    def _draft(self, form: SupplierForm) -> OrderDraft:
        is_known = not form.is_bound or form.is_valid()
        lines = form.lines if is_known else []
        business = self.seat.business.name
        text = order_text(lines, business, None) if lines else ""
        subject = f"Order of {self.today.day} {self.today:%B %Y}, {business}"
        email = form.told.email
        return OrderDraft(form, text, mail_address(email, subject, text) if email and text else "")


class OrdersPage(ListPage):
    does = Action.SEE_KIT

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.page(order_list(self.scope, self.today), None, 200)


class OrderPlacePage(ListPage):
    """A part of the list was ordered, or its text is wanted with other packs."""

    def post(self, request: HttpRequest) -> HttpResponseBase:
        told = order_list(self.scope, self.today)
        supplier = request.POST.get("supplier", "").strip()
        form = next((each for each in self.forms(told, request) if each.told.supplier == supplier), None)
        if form is None:
            messages.error(request, "Nothing of that supplier is in your kit any more.")
            return redirect("kit_orders")
        if not form.is_valid():
            return self.page(told, form, 400)
        if request.POST.get("act") == "text":
            return self.page(told, form, 200)
        try:
            order = place_order(business=self.seat.business, word=form.word(), at=self.now, by=self.seat.user)
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self.page(told, form, 409)
        messages.success(request, f"Noted as ordered from {order.supplier or 'a supplier without a name'}.")
        return redirect("kit_orders")


class OneOrderPage(StockPage):
    """One order: what is still to come of it, what came."""

    template = "visits/kit/order.html"

    def order(self, pk: int) -> tuple[SupplyOrder, list[SupplyLine]]:
        order = self.fetch(SupplyOrder, pk, "by", "business")
        rows = SupplyLine.objects.within(self.scope).filter(order=order).order_by("pk")
        return order, list(rows.select_related("consumable", "order"))

    def page(
        self,
        order: SupplyOrder,
        lines: Sequence[SupplyLine],
        form: ArrivedForm,
        off: CallOffForm,
        status: int,
    ) -> HttpResponse:
        left = still_open(lines)
        shown: dict[str, object] = {
            "order": order,
            "lines": lines,
            "open": left,
            "has_come": any(line.arrived for line in lines),
            "late": [line for line in left if line.expected_on < self.today],
            "expected_on": max((line.expected_on for line in left), default=None),
            "form": form,
            "off": off,
            "text": order_text([ordered_line(line) for line in lines], self.seat.business.name, None),
        }
        return self.show(shown, status=status)


class OrderPage(OneOrderPage):
    does = Action.SEE_KIT

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        order, lines = self.order(pk)
        form = ArrivedForm(still_open(lines), self.scope, self.today)
        return self.page(order, lines, form, CallOffForm(), 200)


class OrderArrivedPage(OneOrderPage):
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        order, lines = self.order(pk)
        form = ArrivedForm(still_open(lines), self.scope, self.today, request.POST)
        if not form.is_valid():
            return self.page(order, lines, form, CallOffForm(), 400)
        arrived = form.arrived()
        try:
            moment = self._moment(form.cleaned_data["arrived_on"])
            word = StockWord(moment, self.now, self.seat.user, form.cleaned_data["uid"])
            receive_supply(order=order, place=form.place, arrived=arrived, word=word)
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self.page(order, lines, form, CallOffForm(), 409)
        came = [each for each in arrived if each.quantity]
        said = (
            f"{counted(len(came), 'line')} came; it lies in {form.place}."
            if came
            else "Nothing more is expected of it."
        )
        messages.success(request, said)
        return redirect("kit_order", pk)

    def _moment(self, day: date) -> datetime:
        zone = self.seat.business.zone
        return self.now if day == local_day(self.now, zone) else at_local(day, MIDDAY, zone)


class OrderOffPage(OneOrderPage):
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        order, lines = self.order(pk)
        off = CallOffForm(request.POST)
        form = ArrivedForm(still_open(lines), self.scope, self.today)
        if not off.is_valid():
            return self.page(order, lines, form, off, 400)
        try:
            call_off_order(order=order, because=off.cleaned_data["because"], at=self.now)
        except RuleBroken as fault:
            off.add_error(None, fault.message)
            return self.page(order, lines, form, off, 409)
        messages.success(request, "Called off: nothing more of it is expected.")
        return redirect("kit_order", pk)


def still_open(lines: Sequence[SupplyLine]) -> list[SupplyLine]:
    return [line for line in lines if line.closed_at is None and line.order.called_off_at is None]


def ordered_line(line: SupplyLine) -> OrderedLine:
    """As it was ordered; in pieces where the packs of today do not divide it."""
    item, unit = line.consumable, Unit(line.consumable.unit)
    packs = line.quantity / item.pack
    if packs == packs.to_integral_value():
        return OrderedLine(item.name, item.size, unit, item.pack, int(packs))
    return OrderedLine(item.name, item.size, unit, line.quantity, 1)
