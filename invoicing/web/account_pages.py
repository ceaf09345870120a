"""One farm's account, its statement, and who owes how much since when."""

from dataclasses import dataclass
from datetime import date, timedelta

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect
from django.urls import reverse
from django.utils.text import slugify

from farms.models import Farm
from invoicing.documents.statement_pdf import statement_pdf
from invoicing.domain.account_lines import AccountLine, AccountWhat
from invoicing.domain.ageing import Age
from invoicing.selectors.aged_debtors import AgedDebtors, aged_debtors
from invoicing.selectors.farm_account import farm_account
from invoicing.selectors.money_addresses import money_addresses
from invoicing.selectors.statement_content import statement_content
from invoicing.services.send_statement import send_statement
from invoicing.web.period_form import FIRST_DAY, LAST_DAY
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer
from trimops.web.scoped_page import ScopedPage

PER_PAGE = 100
HEADS = " | ".join(["Farm", *(f"{age.label} #" for age in Age), "In all #", "On account #"])
HALF_A_YEAR = timedelta(days=182)
OF_PAYMENTS = {AccountWhat.PAYMENT, AccountWhat.PAID_BACK}


@dataclass(frozen=True)
class ShownLine:
    """A line of the account with the address of what it tells of."""

    line: AccountLine
    url: str


class AccountPage(ScopedPage):
    """Asked for a period in the address; the last half year by itself."""

    does = Action.SEE_MONEY

    def asked(self, told: QueryDict) -> tuple[date, date]:
        today = local_day(self.now, self.seat.business.zone)
        last = _day(told.get("last")) or today
        first = _day(told.get("first")) or last - HALF_A_YEAR
        return (first, last) if first <= last else (last, first)

    def farm(self, pk: int) -> Farm:
        return self.fetch(Farm, pk, "business", "payer")


class FarmAccountPage(AccountPage):
    template = "invoicing/farm_account.html"

    def get(self, request: HttpRequest, farm_pk: int) -> HttpResponse:
        farm, (first, last) = self.farm(farm_pk), self.asked(request.GET)
        account = farm_account(self.scope, farm, first, last)
        page = Paginator([_shown(line) for line in account.lines], PER_PAGE)
        asked = f"first={first}&last={last}"
        told = {"farm": farm, "account": account, "addresses": money_addresses(farm), "keep_query": asked}
        return self.show({**told, "page": page.get_page(request.GET.get("page", page.num_pages))})

    def post(self, request: HttpRequest, farm_pk: int) -> HttpResponseBase:
        """Send the statement of that period."""
        farm, (first, last) = self.farm(farm_pk), self.asked(request.POST)
        sent = send_statement(farm=farm, first=first, last=last, at=self.now, by=self.seat.user)
        addresses = ", ".join(sending.outgoing.address for sending in sent)
        messages.success(request, f"The statement is on its way to {addresses}.")
        return redirect(f"{reverse('farm_account', args=[farm_pk])}?first={first}&last={last}")


class FarmStatement(AccountPage):
    """The statement as PDF."""

    costs = {"get": Cost.PAPER}

    def get(self, request: HttpRequest, farm_pk: int) -> HttpResponse:
        farm, (first, last) = self.farm(farm_pk), self.asked(request.GET)
        content = statement_content(self.scope, farm, first, last, self.now)
        return pdf_answer(statement_pdf(content), f"statement-{slugify(farm.name) or farm.pk}-{last}")


class OverduePage(ScopedPage):
    does = Action.SEE_MONEY
    template = "invoicing/money_overdue.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        books = aged_debtors(self.scope, local_day(self.now, self.seat.business.zone))
        own = self.seat.business.currency
        book = next((book for book in books if book.currency == request.GET.get("currency", own)), None)
        book = book or AgedDebtors(own, ())
        page = Paginator(book.debtors, PER_PAGE).get_page(request.GET.get("page"))
        told = {"book": book, "books": books, "page": page, "heads": HEADS}
        return self.show({**told, "keep_query": f"currency={book.currency}"})


def _shown(line: AccountLine) -> ShownLine:
    name = "payment" if line.move.what in OF_PAYMENTS else "invoice"
    return ShownLine(line, reverse(name, args=[line.move.key]))


def _day(text: str | None) -> date | None:
    """The day that the address names; None for what is none, and for years in which nobody kept this account."""
    try:
        day = date.fromisoformat(text or "")
    except ValueError:
        return None
    return day if FIRST_DAY <= day <= LAST_DAY else None
