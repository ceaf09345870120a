"""Payments: all, a new one, one with what it was set against, taken back, paid back."""

from decimal import Decimal

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Farm
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Payment
from invoicing.selectors.open_invoices import OpenRow, open_invoices
from invoicing.selectors.payment_rest import payment_rest
from invoicing.selectors.payment_rows import PaymentFilter, parts_of, payment_rows, payment_sums, with_rests
from invoicing.services.note_payment import note_payment
from invoicing.services.pay_back import MoneyBack, pay_back
from invoicing.services.take_back_payment import take_back_payment
from invoicing.services.use_rest import use_rest
from invoicing.web.payment_forms import (
    PaidBackForm,
    PaymentForm,
    SharesForm,
    WhyForm,
    first_initial,
    shared_out,
)
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money
from trimops.web.asked import number_asked, words_asked
from trimops.web.scoped_page import ScopedPage
from trimops.web.templatetags.figures import money as money_words

PER_PAGE = 60
MOST_WORDS = 60


class PaymentsPage(ScopedPage):
    does = Action.SEE_MONEY
    template = "invoicing/payments.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        shown = PaymentFilter.of(request.GET.get("show", ""))
        text = words_asked(request.GET, MOST_WORDS)
        rows = payment_rows(self.scope, shown, text)
        page = Paginator(rows, PER_PAGE).get_page(request.GET.get("page"))
        return self.show(
            {
                "page": page,
                "rows": with_rests(self.scope, page),
                "sums": payment_sums(rows),
                "shown": shown,
                "filters": list(PaymentFilter),
                "q": text,
                "keep_query": f"show={shown.value}&q={text}" if text else f"show={shown.value}",
            }
        )


class NewPaymentPage(ScopedPage):
    """Without `farm` in the address: choose the farm. With it: how much, and what for."""

    does = Action.KEEP_MONEY
    template = "invoicing/payment_new.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        key = number_asked(request.GET.get("farm"))
        if key is None:
            farms = Farm.objects.within(self.scope).filter(erased_at__isnull=True)
            text = words_asked(request.GET, MOST_WORDS)
            page = Paginator(farms.named_like(text), PER_PAGE).get_page(request.GET.get("page"))
            return self.show({"page": page, "q": text}, "invoicing/payment_farm.html")
        farm, rows = self._farm(key)
        chosen = number_asked(request.GET.get("invoice"))
        initial = first_initial(local_day(self.now, self.seat.business.zone), rows, chosen)
        return self._show(farm, PaymentForm(rows, initial=initial), is_shared=chosen is not None or not rows)

    def post(self, request: HttpRequest) -> HttpResponseBase:
        key = number_asked(request.GET.get("farm"))
        if key is None:
            return redirect("payment_new")
        farm, rows = self._farm(key)
        form = PaymentForm(rows, request.POST)
        if not form.is_valid():
            return self._show(farm, form, status=400)
        if request.POST.get("act") == "share":
            initial = {**form.cleaned_data, **dict.fromkeys(form.fields, None), **_own(form)}
            initial |= shared_out(form.cleaned_data["amount"], rows, farm.business.currency)
            return self._show(farm, PaymentForm(rows, initial=initial), is_shared=True)
        try:
            money = form.money(farm, farm.business.currency)
            payment = note_payment(money=money, at=self.now, by=self.seat.user)
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self._show(farm, form, status=400)
        messages.success(
            request, f"{money_words(payment.amount, payment.currency)} from {farm.name} is noted."
        )
        return redirect("payment", payment.pk)

    def _farm(self, key: int) -> tuple[Farm, list[OpenRow]]:
        farm = self.fetch(Farm, key, "business", "payer")
        return farm, open_invoices(self.scope, farm, farm.business.currency)

    def _show(
        self, farm: Farm, form: PaymentForm, *, is_shared: bool = False, status: int = 200
    ) -> HttpResponse:
        owed = sum((row.open_amount for row in form.rows), Decimal(0))
        told = {"farm": farm, "form": form, "is_shared": is_shared, "owed": owed}
        return self.show({**told, "currency": farm.business.currency}, status=status)


def _own(form: PaymentForm) -> dict[str, object]:
    return {field.name: form.cleaned_data[field.name] for field in form.own_fields}


class PaymentPage(ScopedPage):
    """One payment; what is left of it can be set against open invoices here."""

    does = {"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}
    template = "invoicing/payment.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        payment = self._payment(pk)
        rest = payment_rest(payment)
        rows = self._open(payment, rest)
        form = SharesForm(rows, initial=shared_out(rest, rows, payment.currency))
        return self._show(payment, rest, form)

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        payment = self._payment(pk)
        rest = payment_rest(payment)
        form = SharesForm(self._open(payment, rest), request.POST)
        if form.is_valid():
            try:
                use_rest(payment=payment, shares=form.shares, at=self.now, by=self.seat.user)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "The rest is set against what was chosen.")
                return redirect("payment", pk)
        # because: what refused it may be that somebody else used the rest meanwhile
        return self._show(payment, payment_rest(payment), form, 400)

    def _payment(self, pk: int) -> Payment:
        return self.fetch(Payment, pk, "farm__business", "farm__payer", "bank_entry", "pays_back", "noted_by")

    def _open(self, payment: Payment, rest: Decimal) -> list[OpenRow]:
        if rest <= 0:
            return []
        return open_invoices(self.scope, payment.farm, payment.currency)

    def _show(self, payment: Payment, rest: Decimal, form: SharesForm, status: int = 200) -> HttpResponse:
        told = {"payment": payment, "form": form, "rest": rest, "parts": parts_of(payment)}
        back = list(Payment.objects.within(self.scope).standing().filter(pays_back=payment))
        return self.show({**told, "paid_back": back, "is_out": payment.amount < 0}, status=status)


class TakeBackPage(ScopedPage):
    does = Action.KEEP_MONEY
    template = "invoicing/payment_take_back.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        payment = self.fetch(Payment, pk, "farm")
        return self.show({"payment": payment, "form": WhyForm(), "parts": parts_of(payment)})

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        payment, form = self.fetch(Payment, pk, "farm"), WhyForm(request.POST)
        if form.is_valid():
            because = form.cleaned_data["because"]
            try:
                take_back_payment(payment=payment, because=because, at=self.now, by=self.seat.user)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "The payment is taken back; what it had settled is open again.")
                return redirect("payment", pk)
        return self.show({"payment": payment, "form": form, "parts": parts_of(payment)}, status=400)


class PayBackPage(ScopedPage):
    """The rest of a payment goes back to the farm."""

    does = Action.KEEP_MONEY
    template = "invoicing/payment_pay_back.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        payment = self.fetch(Payment, pk, "farm")
        today = local_day(self.now, self.seat.business.zone)
        rest = round_money(payment_rest(payment), minor_digits(payment.currency))
        told = {"amount": rest, "paid_on": today, "method": payment.method}
        return self._show(payment, PaidBackForm(initial=told))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        payment, form = self.fetch(Payment, pk, "farm"), PaidBackForm(request.POST)
        if form.is_valid():
            try:
                back = pay_back(money=money_back(payment, form), at=self.now, by=self.seat.user)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(
                    request, f"{money_words(-back.amount, back.currency)} is noted as paid back."
                )
                return redirect("payment", pk)
        return self._show(payment, form, 400)

    def _show(self, payment: Payment, form: PaidBackForm, status: int = 200) -> HttpResponse:
        return self.show({"payment": payment, "form": form, "rest": payment_rest(payment)}, status=status)


def money_back(payment: Payment, form: PaidBackForm) -> MoneyBack:
    told = form.cleaned_data
    method = PaymentMethod(told["method"])
    return MoneyBack(payment, told["paid_on"], told["amount"], method, told["note"])
