"""Invoices and credit notes drawn at random over all that a trimmer may bill: rates, discounts, charges, categories.

Everything is invented. The same seed gives the same papers, so a fault that is found can be looked at again.
"""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, datetime, timedelta
from decimal import Decimal
from random import Random
from zoneinfo import ZoneInfo

from invoicing.documents.invoice_content import (
    Correction,
    HomeTax,
    InvoiceLine,
    InvoicePaper,
    Party,
    Payment,
    TaxRow,
    WholeLine,
)
from invoicing.domain.amounts import AmountLine, InvoiceAmounts, RoundingRule, WholeAmount, invoice_amounts
from invoicing.domain.creditor_reference import creditor_reference
from invoicing.domain.minor_units import minor_digits
from trimops.kernel.money import round_money

ZERO = Decimal(0)
CURRENCIES = ("GBP", "EUR", "EUR", "DKK", "CHF", "JPY", "ISK", "HUF", "NOK")
# Category and rates that may stand on one invoice.
SCHEMES: tuple[tuple[tuple[str, str], ...], ...] = (
    (("S", "20"),),
    (("S", "20"), ("S", "5"), ("Z", "0")),
    (("S", "19"), ("S", "7")),
    (("S", "21"), ("S", "13.5"), ("S", "9"), ("E", "0")),
    (("S", "25"), ("E", "0"), ("AE", "0")),
    (("S", "2.1"), ("S", "5.5"), ("Z", "0")),
    (("E", "0"),),
    (("AE", "0"),),
    (("O", "0"),),
    (("Z", "0"),),
)
NAMES = (
    "Ørnsø Kødkvæg & Sønner",
    "Æblegård I/S",
    "Müller-Größ GbR <Hof>",
    "Ó Braonáin Déirí",
    'Château d\'Étable "Les Prés"',
    "T. " + "Langefeldt-" * 8 + "Brunn",
)
WORK = (
    "Functional trim",
    "Corrective trim",
    "Block, glued",
    "Call-out",
    "Travel",
    "Wrap & dressing",
    "Schnitt 50 %",
)
UNITS = ("C62", "C62", "KMT", "SMI", "HUR", "cow")
IBANS = {"EUR": "DE89370400440532013000", "GBP": "GB29NWBK60161331926819", "DKK": "DK5000400440116243"}
BELGIAN = "BE68539007547034"


def drawn_papers(seed: int) -> Iterator[InvoicePaper]:
    """Papers without end."""
    rng = Random(seed)
    position = 0
    while True:
        position += 1
        yield drawn_paper(rng, position)


def drawn_paper(rng: Random, position: int = 1) -> InvoicePaper:
    """One issued paper whose figures are right by the rounding rule drawn."""
    currency = rng.choice(CURRENCIES)
    digits = minor_digits(currency)
    scheme = rng.choice(SCHEMES)
    rule = rng.choice(tuple(RoundingRule))
    drawn = [_amount_line(rng, scheme, digits) for _ in range(rng.choice((1, 1, 2, 3, 5, 8, 14)))]
    whole = [_whole(rng, scheme, digits) for _ in range(rng.choice((0, 0, 0, 1, 2)))]
    first = invoice_amounts(drawn, whole, digits, rule)
    prepaid = round_money(first.gross / 3, digits) if rng.random() < 0.2 else ZERO
    rounding = Decimal(rng.randint(-2, 2)).scaleb(-digits) if rng.random() < 0.2 else ZERO
    amounts = invoice_amounts(drawn, whole, digits, rule, prepaid=prepaid, rounding=rounding)
    day = date(2026, 1, 1) + timedelta(days=rng.randrange(365))
    paper = InvoicePaper(
        number=f"INV-2026-{position:04d}",
        issue_date=day,
        tax_point=day - timedelta(days=rng.randrange(10)),
        due_date=day + timedelta(days=30),
        made_at=datetime(2026, 12, 2, 9, tzinfo=ZoneInfo("Europe/London")),
        seller=_seller(rng, scheme),
        buyer=_buyer(rng, scheme),
        lines=tuple(_line(rng, one, net, day) for one, net in zip(drawn, amounts.line_nets, strict=True)),
        tax_rows=_tax_rows(rng, amounts),
        net=amounts.net,
        tax=amounts.tax,
        gross=amounts.gross,
        due=amounts.payable,
        paid=amounts.prepaid,
        currency=currency,
        digits=digits,
        payment=_payment(rng, currency, position),
        whole=tuple(_whole_line(rng, part) for part in whole),
        line_sum=amounts.line_sum,
        allowances=amounts.allowances,
        charges=amounts.charges,
        rounding=amounts.rounding,
        order_number=rng.choice(("", "", "PO 4711/A")),
        buyer_reference=rng.choice(("", "Dairy unit 2")),
        notes=rng.choice(((), ("Work at Højgård.",), ("Thank you.", "Keys: under the bucket\x0b"))),
        cash_discount=rng.choice(("", "2 % off within 8 days.")),
        home_tax=_sterling(rng, amounts, currency),
        rounding_rule=rule,
    )
    wants_credit = rng.random() < 0.25 and paper.gross >= 0
    return _as_credit_note(rng, paper) if wants_credit else _with_period(rng, paper)


def _amount_line(rng: Random, scheme: tuple[tuple[str, str], ...], digits: int) -> AmountLine:
    category, percent = rng.choice(scheme)
    quantity = rng.choice(
        (Decimal(rng.randint(1, 180)), Decimal(rng.randint(1, 99999)).scaleb(-2), Decimal(-1), ZERO)
    )
    price = rng.choice(
        (Decimal(rng.randint(1, 9000)).scaleb(-2), Decimal(rng.randint(1, 99999)).scaleb(-4), ZERO)
    )
    if rng.random() < 0.05:
        price = -price
    off = Decimal(rng.choice((0, 0, 0, 5, 10, 33)))
    allowance = round_money(quantity * price * off / 100, digits)
    return AmountLine(quantity, price, category, Decimal(percent), allowance)


def _line(rng: Random, one: AmountLine, net: Decimal, day: date) -> InvoiceLine:
    has_percent = bool(one.allowance) and rng.random() < 0.5
    return InvoiceLine(
        rng.choice(WORK),
        one.quantity,
        rng.choice(UNITS),
        one.unit_price,
        one.tax_category,
        one.tax_percent,
        net,
        rng.choice(("", "17 cows, all feet", "kühe 4 & 5")),
        one.allowance,
        Decimal("5.0000") if has_percent else None,
        rng.choice(("", "agreed for the year")) if one.allowance else "",
        rng.choice((None, day, day - timedelta(days=40))),
    )


def _whole(rng: Random, scheme: tuple[tuple[str, str], ...], digits: int) -> WholeAmount:
    category, percent = rng.choice(scheme)
    amount = round_money(Decimal(rng.randint(0, 5000)).scaleb(-2), digits)
    return WholeAmount(rng.random() < 0.4, amount, category, Decimal(percent))


def _whole_line(rng: Random, part: WholeAmount) -> WholeLine:
    base, percent = (part.amount * 10, Decimal(10)) if rng.random() < 0.5 else (None, None)
    return WholeLine(
        part.is_charge,
        part.amount,
        rng.choice(("Herd of the month", "Rind & Kuh")),
        part.tax_category,
        part.tax_percent,
        base,
        percent,
    )


def _tax_rows(rng: Random, amounts: InvoiceAmounts) -> tuple[TaxRow, ...]:
    reasons = {
        "E": (("Small business, § 19", ""), ("Exempt by law", "VATEX-EU-132")),
        "AE": (("Reverse charge", ""), ("Reverse charge", "VATEX-EU-AE")),
        "O": (("Not subject to VAT", ""), ("Not registered", "VATEX-EU-O")),
        "Z": (("", ""), ("Zero-rated", "")),
    }
    return tuple(
        TaxRow(
            share.category,
            share.percent,
            share.taxable,
            share.tax,
            *rng.choice(reasons.get(share.category, (("", ""),))),
        )
        for share in amounts.tax_shares
    )


def _seller(rng: Random, scheme: tuple[tuple[str, str], ...]) -> Party:
    outside = scheme[0][0] == "O"
    number = rng.choice(
        ("GB980780684", "980 7806 84", "GB980780684", "" if scheme[0][0] == "E" else "GB980780684")
    )
    return Party(
        rng.choice(NAMES),
        ("2 Mill Lane", "Skelder", "SK0 0AA", "North Riding")[: rng.randint(1, 4)],
        number,
        rng.choice(("", "01632 960 001")),
        rng.choice(("", "office@skelderdale.example")),
        rng.choice(((), ("Sole trader",))),
        "GB",
        "12 345" if outside or not number else rng.choice(("", "12 345")),
        "Trade register",
    )


def _buyer(rng: Random, scheme: tuple[tuple[str, str], ...]) -> Party:
    reverse = any(category == "AE" for category, _ in scheme)
    number = "IE6433435F" if reverse else rng.choice(("", "ATU13585627"))
    return Party(
        rng.choice(NAMES), ("High Thornbeck",), number, "", rng.choice(("", "kontor@gaard.example")), (), "IE"
    )


def _payment(rng: Random, currency: str, position: int) -> Payment:
    number = f"INV-2026-{position:04d}"
    terms = rng.choice(("", "Please pay by the day above."))
    if rng.random() < 0.3:
        details = (("Sort code", "00-00-00"), ("Account", "00000000"))
        return Payment(details, number, terms)
    iban = BELGIAN if rng.random() < 0.1 else IBANS.get(currency, IBANS["EUR"])
    bic = rng.choice(("", "NWBKGB2L"))
    return Payment(
        (), number, terms, iban, bic, "Skelderdale Trimming", creditor_reference(number), "Interest by law."
    )


def _sterling(rng: Random, amounts: InvoiceAmounts, currency: str) -> HomeTax | None:
    """All sellers here are British."""
    told = amounts.tax or rng.random() < 0.2
    return HomeTax("GBP", round_money(amounts.tax / 2)) if currency != "GBP" and told else None


def _as_credit_note(rng: Random, paper: InvoicePaper) -> InvoicePaper:
    corrected = Correction("INV-2025-0999", paper.issue_date - timedelta(days=9), "Two cows billed twice.")
    return replace(
        paper, number=f"CN-{paper.number}", corrects=corrected, due_date=rng.choice((None, paper.due_date))
    )


def _with_period(rng: Random, paper: InvoicePaper) -> InvoicePaper:
    if rng.random() < 0.7:
        return paper
    return replace(paper, period=(paper.issue_date - timedelta(days=30), paper.issue_date))
