"""A year of one business through its services: every place that tells an amount tells the same one, to the cent.

Played are: prices and the tax rate that change inside a month, discounts agreed and by hand, a payer's two farms, part,
over and wrong payments, cash, credit notes in part and of everything, money back, a write-off, a closed period.
"""

from collections import defaultdict
from datetime import date, timedelta
from decimal import Decimal as D
from html import unescape
from io import BytesIO

import pytest
from django.test import Client
from django.urls import reverse
from lxml import etree
from pypdf import PdfReader

from farms.models import FarmAccess, Payer
from farms.services.give_farm_rights import give_farm_rights
from invoicing.documents.e_invoice_reading import amounts_of
from invoicing.documents.statement_pdf import statement_pdf
from invoicing.domain.billing_rhythm import BillingRhythm
from invoicing.domain.book_parts import BookPart
from invoicing.domain.credit_lines import CreditAsk
from invoicing.domain.discount import Discount
from invoicing.domain.pricing import PriceItem
from invoicing.domain.settling import PaymentMethod
from invoicing.domain.tax_periods import BookDay, month_of, year_of
from invoicing.models import Agreement, FarmTerms, Invoice, InvoiceLine, Payment, Price, PriceList, TaxRate
from invoicing.selectors.aged_debtors import aged_debtors
from invoicing.selectors.book_parts import books
from invoicing.selectors.farm_account import farm_account
from invoicing.selectors.farm_invoices import to_pay
from invoicing.selectors.kept_amounts import kept_amounts
from invoicing.selectors.money_desk import money_desk
from invoicing.selectors.open_on import open_on
from invoicing.selectors.sales_journal import sales_journal
from invoicing.selectors.statement_content import statement_content
from invoicing.services.change_draft_head import DraftHead, change_draft_head
from invoicing.services.change_line import LineChange, change_line
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.draft_late_work import draft_late_work
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.pay_back import MoneyBack, pay_back
from invoicing.services.set_off_credit import set_off_credit
from invoicing.services.set_whole_amount import WholeChange, set_whole_amount
from invoicing.services.take_back_payment import take_back_payment
from invoicing.services.use_rest import use_rest
from invoicing.services.write_off import write_off
from tests.factories import make_farm, make_house, make_prices
from tests.invoicing.money_year import MoneyYear, at, day
from tests.invoicing.services.billing import late_cow, line_of
from tests.invoicing.tax_summary import tax_summary
from trimops.accounts.roles import FarmRight
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope
from trimops.paper.figures import money as money_words
from visits.domain.visit_states import VisitReason

LAST = date(2026, 12, 31)
NOUGHT = D(0)


@pytest.fixture
def year(db):
    """Prices with odd pence, others from 15 June on; the usual rate is 20 % and 23 % from 15 September on."""
    house = make_house()
    own = {"functional": "11.37", "block": "14.25", "call_out": "33.33", "minimum": "0", "urgent": "12.50"}
    make_prices(house.business, **own)
    newer = PriceList.objects.create(business=house.business, name="From June", valid_from=day(6, 15))
    for item in PriceItem:
        price, code = D(own.get(item.value, "10")) * D("1.07"), "low" if item is PriceItem.BLOCK else "usual"
        Price.objects.create(
            business=house.business, price_list=newer, item=item, unit_price=price, tax_code=code
        )
    TaxRate.objects.create(
        business=house.business, code="usual", category="S", percent=23, valid_from=day(9, 15)
    )
    return MoneyYear(house)


def play(year):
    """About forty events on three farms; two have one payer, one of these is billed by the month."""
    house = year.house
    business, low = house.business, house.farm
    estate = Payer.objects.create(business=business, name="The Estate", address="1 The Avenue\nNowhere")
    high, hill = (
        make_farm(business, name, by=house.owner, payer=estate) for name in ("High Barn", "Hill End")
    )
    FarmTerms.objects.create(business=business, farm=high, rhythm=BillingRhythm.MONTH, order_number="PO 7")
    Agreement.objects.create(
        business=business, farm=hill, kind="percent", amount=D("7.5"), why="Agreed", valid_from=day(1, 1)
    )
    # March and April: part of it paid, a discount on the whole, a line less by hand, too much money.
    one = year.bill(low, at(3, 3), cows=3)
    year.pay(low, "40", at(3, 20), {one: "40"})
    draft = year.draft(year.work(low, at(3, 10), cows=4, reason=VisitReason.URGENT))
    hand = year.hand(at(3, 10, 15))
    draft = set_whole_amount(invoice=draft, change=WholeChange(False, Discount(percent=D("3.5"))), hand=hand)
    line = line_of(draft, PriceItem.FUNCTIONAL)
    change = LineChange("Functional trim, quiet cows", line.quantity, Discount(amount=D("1.11")))
    draft = change_line(line=line, change=change, hand=hand)
    two = year.issue(draft, at(3, 11))
    much = year.pay(low, two.payable + D("25.55"), at(4, 1), {two: two.payable})
    use_rest(payment=much, shares={one.pk: D("5.55")}, at=at(4, 2), by=house.office)
    pay_back(money=MoneyBack(much, day(4, 3), D("20"), PaymentMethod.CASH), at=at(4, 3), by=house.office)
    # A part is credited, then all of another, which was paid already: it goes against a third, the rest goes back.
    year.credit(one, at(4, 7), [CreditAsk(line_of(one, PriceItem.FUNCTIONAL).pk, quantity=D(1))])
    back = year.credit(two, at(4, 8))
    three = year.bill(low, at(4, 14), cows=1)
    set_off_credit(credit_note=back, invoice=three, at=at(4, 20), by=house.office)
    back.refresh_from_db()
    pay_back(money=MoneyBack(back, day(4, 21), D("10"), PaymentMethod.BANK), at=at(4, 21), by=house.office)
    # Hill End: seven and a half percent off; High Barn's June has two price lists, one visit ends at 23:50 on the 30th.
    four = year.bill(hill, at(5, 5), cows=5)
    wrong = year.pay(hill, "500", at(5, 20), {four: "50"})
    take_back_payment(payment=wrong, because="It was another's", at=at(5, 22), by=house.office)
    june = [year.work(high, at(6, 9)), year.work(high, at(6, 16), cows=3), year.work(high, at(6, 30, 19))]
    assert june[2].finished_at == at(6, 30, 22)  # 23:00 in London
    drafts = {year.draft(visit).pk for visit in june}
    assert len(drafts) == 1
    five = year.issue(Invoice.objects.within(house.scope).get(pk=drafts.pop()), at(7, 1))
    july = year.draft(year.work(high, at(6, 30, 20) + timedelta(days=14)))
    late = year.work(high, at(6, 30, 21))  # it ends at 01:00 on 1 July in London
    assert year.draft(late).pk == july.pk
    six = year.issue(Invoice.objects.within(house.scope).get(pk=july.pk), at(8, 3))
    # One payment of the payer's for both of its farms; what is left of Hill End's is written off.
    year.pay(high, five.payable + D("60"), at(8, 20), {five: five.payable, four: "60"})
    four.refresh_from_db()
    write_off(invoice=four, reason="Gone away", at=at(9, 1), by=house.office)
    # The tax rate changes inside September: two rates on one invoice.
    september = [year.work(high, at(9, 8)), year.work(high, at(9, 22))]
    seven = year.issue([year.draft(visit) for visit in september][-1], at(10, 2))
    # The first half is closed; a cow of May comes only now, and the day that counts for the tax is moved on.
    lock_period(scope=house.scope, until=day(6, 30), why="The return is sent", at=at(10, 5), by=house.owner)
    may = four.visit
    late_cow(house, may)
    draft_invoice(visit=may, at=at(10, 6))
    hand = year.hand(at(10, 6))
    (more,) = draft_late_work(visit=may, hand=hand)
    with pytest.raises(PeriodLocked):
        year.issue(more, at(10, 6))
    more = change_draft_head(invoice=more, head=DraftHead("", "", "", tax_point=day(10, 6)), hand=hand)
    late_bill = year.issue(more, at(10, 6))
    # Paid before, and a draft that stays one.
    draft = year.draft(year.work(low, at(10, 13), cows=2))
    head = DraftHead("Thank you", "", "", prepaid=D("15.00"))
    eight = year.issue(change_draft_head(invoice=draft, head=head, hand=year.hand(at(10, 13))), at(10, 14))
    note = year.credit(eight, at(11, 2), again=True)
    assert (note.tax_point, late_bill.tax_point) == (day(11, 2), day(10, 6))
    year.draft(year.work(low, at(11, 10)))
    return {"five": five, "six": six, "seven": seven, "late": late_bill}


def issued_in(house):
    return list(Invoice.objects.within(house.scope).issued().order_by("issued_on", "id"))


def test_every_place_that_tells_an_amount_tells_the_same(year):
    house, made = year.house, play(year)
    papers = issued_in(house)
    assert len(papers) == 12
    for paper in papers:
        agrees_with_its_papers(paper)
    the_books_agree(house, papers)
    the_accounts_agree(house)
    the_pages_agree(house)
    on_the_month_invoices(house, made)


def agrees_with_its_papers(paper):
    """Lines, row, PDF, CII and UBL."""
    amounts = kept_amounts(paper)
    told = {"BT-109": paper.net, "BT-110": paper.tax, "BT-112": paper.gross, "BT-115": paper.payable}
    assert (amounts.net, amounts.tax, amounts.gross, amounts.payable) == tuple(told.values())
    for xml in (paper.papers.cii, paper.papers.ubl):
        read = amounts_of(etree.fromstring(bytes(xml)))
        assert read.number == paper.number
        assert {term: read.totals[term] for term in told} == told
        shares = {(s.category, s.percent): (s.taxable, s.tax) for s in amounts.tax_shares}
        assert {(row[0], row[1]): row[2:] for row in read.tax_rows} == shares
    text = text_of(paper.papers.pdf)
    for amount in told.values():
        assert money_words(round_money(amount), paper.currency, 2) in text
    assert paper.number in text


def text_of(pdf):
    return " ".join(" ".join(page.extract_text() for page in PdfReader(BytesIO(bytes(pdf))).pages).split())


def the_books_agree(house, papers):
    """The year, its months, the rates and the tables of the files."""
    whole = year_of(day(6, 1))
    for by in BookDay:
        summary = tax_summary(house.scope, whole, by)
        (sold,) = summary.currencies
        assert (sold.net, sold.tax, sold.gross) == tuple(
            sum(paper.sign * getattr(paper, name) for paper in papers) for name in ("net", "tax", "gross")
        )
        assert sum(rate.net for rate in summary.rates) == sold.net
        assert sum(rate.tax for rate in summary.rates) == sold.tax
        months = [tax_summary(house.scope, month_of(day(number, 1)), by) for number in range(1, 13)]
        assert sum(one.gross for month in months for one in month.currencies) == sold.gross
        tables = books(house.business, whole, by).tables
        sums = {part: dict(tables[part].sums()).get("GBP", {}) for part in BookPart}
        assert sums[BookPart.JOURNAL]["Total"] == sums[BookPart.TAX]["Total"] == sold.gross
    by_number = {row.number: row for row in sales_journal(house.scope, whole)}
    assert [by_number[paper.number].gross for paper in papers] == [
        paper.sign * paper.gross for paper in papers
    ]


def owed(house):
    """What each farm owes by the plainest reckoning there is: papers, money, written off, money between farms."""
    found = defaultdict(lambda: NOUGHT)
    for paper in issued_in(house):
        found[paper.farm_id] += paper.sign * paper.payable
    for payment in Payment.objects.within(house.scope).standing():
        found[payment.farm_id] -= payment.amount
        for part in payment.allocations.within(house.scope).standing().select_related("invoice"):
            found[payment.farm_id] += part.amount * (part.invoice.farm_id != payment.farm_id)
            found[part.invoice.farm_id] -= part.amount * (part.invoice.farm_id != payment.farm_id)
    for paper in issued_in(house):
        for part in paper.allocations.within(house.scope).standing().filter(kind="write_off"):
            found[paper.farm_id] -= part.amount
    return found


def the_accounts_agree(house):
    """Account, statement, aged debtors, what was open on the last day, the desk, what the farm's own people see."""
    scope, right = house.scope, owed(house)
    ((book),) = aged_debtors(scope, LAST)
    by_farm = defaultdict(lambda: NOUGHT)
    for debtor in book.debtors:
        by_farm[debtor.farm_id] += debtor.total - debtor.unused
    still = open_on(scope, LAST)
    bills = sum(row.still_open for row in still if row.still_open > 0)
    assert bills == book.total
    assert [heap.sum for heap in money_desk(scope, "GBP", LAST).open] == [book.total]
    assert sum(right.values()) == book.total - book.unused
    for farm in {paper.farm for paper in issued_in(house)}:
        account = farm_account(scope, farm, day(1, 1), LAST)
        assert account.closing == right[farm.pk] == by_farm[farm.pk], farm.name
        assert account.opening + account.debits - account.credits == account.closing
        first, rest = (
            farm_account(scope, farm, day(1, 1), day(6, 15)),
            farm_account(scope, farm, day(6, 16), LAST),
        )
        assert first.closing == rest.opening
        assert rest.closing == account.closing
        statement = statement_content(scope, farm, day(1, 1), LAST, at(12, 31))
        age = statement.ageing
        assert statement.closing == account.closing
        open_sum = age.not_yet_due + age.to_30 + age.to_60 + age.to_90 + age.over_90
        assert open_sum - age.unused == account.closing
        text = text_of(statement_pdf(statement))
        sum_words = money_words(abs(account.closing), "GBP", 2) if account.closing else "Nothing is open"
        assert sum_words in text
        told = to_pay(Scope(house.business.pk, farm.pk), LAST)
        left = sum(row.still_open for row in still if row.farm == farm.name)
        assert sum(one.left for one in told) == left


def the_pages_agree(house):
    """The office's pages and the farm's say those very sums."""
    office, client = Client(), Client()
    office.force_login(house.office)
    client.force_login(house.client)
    give_farm_rights(access=FarmAccess.objects.within(house.scope).get(), rights={FarmRight.SEES_MONEY})

    def page(browser, name, *args, query=""):
        answer = browser.get(reverse(name, args=args) + query)
        assert answer.status_code == 200
        return unescape(answer.content.decode())

    ((book),) = aged_debtors(house.scope, LAST)
    assert money_words(book.total, "GBP", 2) in page(office, "money_overdue")
    assert money_words(book.total, "GBP", 2) in page(office, "invoice_list")
    (sold,) = tax_summary(house.scope, year_of(day(6, 1))).currencies
    shown = page(office, "books", query="?kind=year&first=2026-06-01")
    assert all(money_words(amount, "GBP", 2) in shown for amount in (sold.net, sold.tax, sold.gross))
    account = farm_account(house.scope, house.farm, day(1, 1), LAST)
    asked = "?first=2026-01-01&last=2026-12-31"
    assert money_words(abs(account.closing), "GBP", 2) in page(
        office, "farm_account", house.farm.pk, query=asked
    )
    (told,) = to_pay(Scope(house.business.pk, house.farm.pk), LAST)
    assert money_words(told.left, "GBP", 2) in page(client, "portal_money")


def on_the_month_invoices(house, made):
    """A month with two price lists, one with two rates, and the visit that ended after midnight of the zone."""

    def lines(name):
        return list(InvoiceLine.objects.within(house.scope).filter(invoice=made[name]))

    assert [(line.unit_price, line.done_on) for line in lines("late")] == [(D("11.37"), day(5, 5))]
    june = {line.unit_price for line in lines("five") if line.item == "functional"}
    assert june == {D("11.37"), D("12.1659")}
    assert {line.done_on for line in lines("five")} == {day(6, 9), day(6, 16), day(6, 30)}
    assert day(7, 1) in {line.done_on for line in lines("six")}
    rates = {(line.done_on, line.tax_percent) for line in lines("seven") if line.item == "functional"}
    assert rates == {(day(9, 8), D(20)), (day(9, 22), D(23))}
