"""Prices, by the day from which they hold."""

from django.contrib import messages
from django.core.paginator import Paginator
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from invoicing.models import PriceList
from invoicing.selectors.price_lists import price_lists, shown_lists
from invoicing.selectors.tax_choices import tax_choices
from invoicing.services.drop_prices import drop_prices
from invoicing.services.lock_period import PeriodLocked
from invoicing.services.set_prices import (
    ListBeginsThen,
    PricesBilledOn,
    TaxRateUnknown,
    TravelPriceMissing,
    set_prices,
)
from invoicing.web.price_form import PriceForm
from invoicing.web.price_start import start_anew, start_from
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 6
FIELD_OF: tuple[tuple[type[RuleBroken], str | None], ...] = (
    (ListBeginsThen, "valid_from"),
    (PeriodLocked, "valid_from"),
    (TravelPriceMissing, "travel_rule"),
    (TaxRateUnknown, None),
    (PricesBilledOn, None),
)


class PricesPage(ScopedPage):
    """Every list, the newest first, with what changed."""

    does = Action.KEEP_PRICES
    template = "invoicing/prices.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        rows = price_lists(self.scope)
        page = Paginator(rows, PER_PAGE).get_page(request.GET.get("page"))
        shown = list(page.object_list)
        before = rows.filter(valid_from__lt=shown[-1].valid_from).first() if shown else None
        today = local_day(self.now, self.seat.business.zone)
        return self.show(
            {
                "page": page,
                "lists": shown_lists(self.scope, shown, before),
                "held": PriceList.objects.within(self.scope).held_on(today).first(),
                "today": today,
                "has_tax": bool(tax_choices(self.scope)),
            }
        )


class PriceListPage(ScopedPage):
    """A new list (no key), begun as a copy of the newest, or one that nothing was billed at."""

    does = Action.KEEP_PRICES
    template = "invoicing/price_list.html"

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        row = self._row(pk)
        if row is not None:
            return self._show(row, self._form_of(row))
        newest = PriceList.objects.within(self.scope).order_by("-valid_from").first()
        today = local_day(self.now, self.seat.business.zone)
        return self._show(None, self._new_form(initial=start_anew(self.scope, newest, today)))

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponseBase:
        row = self._row(pk)
        form = self._form_of(row.locked(), request.POST) if row else self._new_form(request.POST)
        if form.is_valid() and self._is_kept(form, row):
            messages.success(request, "The prices are kept. Work done before that day keeps its own.")
            return redirect("prices")
        return self._show(row, form, form.refused_as)

    def _is_kept(self, form: PriceForm, row: PriceList | None) -> bool:
        try:
            set_prices(business=self.seat.business, sheet=form.sheet(), instead_of=row)
        except tuple(kind for kind, _ in FIELD_OF) as fault:
            form.add_error(next(field for kind, field in FIELD_OF if isinstance(fault, kind)), fault.message)
            return False
        return True

    def _row(self, pk: int | None) -> PriceList | None:
        return self.fetch(PriceList, pk) if pk else None

    def _form_of(self, row: PriceList, data: QueryDict | None = None) -> PriceForm:
        return PriceForm(data, taxes=tax_choices(self.scope), initial=start_from(self.scope, row))

    def _new_form(self, data: QueryDict | None = None, initial: dict[str, object] | None = None) -> PriceForm:
        return PriceForm(data, taxes=tax_choices(self.scope), initial=initial, is_new=True)

    def _show(self, row: PriceList | None, form: PriceForm, status: int = 200) -> HttpResponse:
        return self.show({"row": row, "form": form, "has_tax": bool(form.taxes)}, status=status)


class PriceListDrop(ScopedPage):
    """Take a list off that nothing was billed at."""

    does = Action.KEEP_PRICES

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        row = self.fetch(PriceList, pk)
        drop_prices(price_list=row)
        messages.success(request, f"“{row.name}” is gone; the list before it holds again.")
        return redirect("prices")
