"""An invoice as the business terms of EN 16931 (BT-1 ... BT-161), for CII and UBL alike."""

from datetime import date
from decimal import Decimal

from invoicing.documents.e_invoice_party import buyer_terms, seller_terms
from invoicing.documents.e_invoice_shape import Terms, amount_text, number_text, tidy, xml_text
from invoicing.documents.invoice_content import InvoiceLine, InvoicePaper, TaxRow, WholeLine
from invoicing.domain.code_lists import AGREED_UNIT, UNITS
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.tax_reasons import reason_and_code
from invoicing.domain.tax_scheme import NEEDS_A_REASON
from trimops.kernel.money import round_money

INVOICE, CREDIT_NOTE = "380", "381"
SEPA_TRANSFER, TRANSFER, NOT_DEFINED = "58", "30", "1"


def business_terms(paper: InvoicePaper) -> Terms:
    """All terms of an issued paper; empty ones are left out. The paper is sound (`refuse_if_not_electronic`)."""
    return tidy(
        {
            "BT-1": paper.number or "",
            "BT-2": paper.issue_date,
            "BT-3": CREDIT_NOTE if paper.corrects else INVOICE,
            "BT-5": paper.currency,
            "BT-7": paper.tax_point,
            "BT-10": paper.buyer_reference,
            "BT-13": paper.order_number,
            "BG-1": [{"BT-22": note} for note in _notes(paper)],
            "BG-4": seller_terms(paper),
            "BG-7": buyer_terms(paper),
            "BG-23": [_tax_row(row, paper) for row in paper.tax_rows],
            "BG-25": [_line(position, line, paper) for position, line in enumerate(paper.lines, start=1)],
            **_when(paper),
            **_corrected(paper),
            **_payment(paper),
            **_whole(paper),
            **_totals(paper),
        }
    )


def _notes(paper: InvoicePaper) -> list[str]:
    """Notes, why a credit note corrects, and reasons that a tax row has no place for (S and Z: BR-S-10, BR-Z-10)."""
    reasons = [row.exempt_reason for row in paper.tax_rows if row.category not in NEEDS_A_REASON]
    why = [paper.corrects.reason] if paper.corrects else []
    return [*why, *paper.notes, *dict.fromkeys(reason for reason in reasons if reason)]


def _when(paper: InvoicePaper) -> Terms:
    """Day of supply, the period of a bill of several days, and the due day, which a credit note has not."""
    terms: Terms = {"BT-72": paper.supplied_on}
    if paper.due_date and not paper.corrects:
        terms["BT-9"] = paper.due_date
    if paper.period:
        terms |= {"BT-73": paper.period[0], "BT-74": paper.period[1]}
    return terms


def _corrected(paper: InvoicePaper) -> Terms:
    if not paper.corrects:
        return {}
    corrected = paper.corrects
    return {"BG-3": [{"BT-25": corrected.invoice_number, "BT-26": corrected.invoice_date}]}


def _payment(paper: InvoicePaper) -> Terms:
    """How to pay (not on a credit note). Bank details that are no IBAN stand in the terms of payment as on paper."""
    pay = paper.payment
    if paper.corrects:
        return {}
    details = [] if pay.iban else [f"{what}: {value}" if what else value for what, value in pay.details]
    words = [pay.terms, paper.cash_discount, pay.credit_terms, "; ".join(details)]
    terms: Terms = {
        "BT-20": " ".join(word for word in words if word),
        "BT-83": pay.creditor_reference or pay.reference,
    }
    if pay.iban:
        terms |= {
            "BT-81": SEPA_TRANSFER if paper.currency == "EUR" else TRANSFER,
            "BT-84": pay.iban,
            "BT-85": pay.account_name,
            "BT-86": pay.bic,
        }
    elif pay.details:
        terms["BT-81"] = NOT_DEFINED
    return terms


def _whole(paper: InvoicePaper) -> Terms:
    """Discounts and charges on the whole; their sums are told where there is one, even if it is nought (BR-CO-11)."""
    allowances = [_whole_line(part, paper.digits) for part in paper.whole if not part.is_charge]
    charges = [_whole_line(part, paper.digits) for part in paper.whole if part.is_charge]
    terms: Terms = {"BG-20": allowances, "BG-21": charges}
    if allowances:
        terms["BT-107"] = amount_text(paper.allowances, paper.digits)
    if charges:
        terms["BT-108"] = amount_text(paper.charges, paper.digits)
    return terms


def _whole_line(part: WholeLine, digits: int) -> Terms:
    return {
        "amount": amount_text(part.amount, digits),
        "reason": xml_text(part.reason) or ("Charge" if part.is_charge else "Discount"),
        "vat_category_code": part.tax_category,
        "vat_rate": _percent(part.tax_category, part.tax_percent),
        **_share(part.percent, part.base, digits),
    }


def _share(percent: Decimal | None, base: Decimal | None, digits: int) -> Terms:
    """Percent and what it is taken of, both or none."""
    if percent is None or base is None:
        return {}
    return {"rate": number_text(percent), "base_amount": amount_text(base, digits)}


def _totals(paper: InvoicePaper) -> Terms:
    digits = paper.digits
    terms: Terms = {
        "BT-106": amount_text(paper.sum_of_lines, digits),
        "BT-109": amount_text(paper.net, digits),
        "BT-110": amount_text(paper.tax, digits),
        "BT-112": amount_text(paper.gross, digits),
        "BT-113": amount_text(paper.paid, digits) if paper.paid else "",
        "BT-114": amount_text(paper.rounding, digits) if paper.rounding else "",
        "BT-115": amount_text(paper.due, digits),
    }
    home = paper.home_tax
    if home is not None and home.currency != paper.currency:
        terms |= {"BT-6": home.currency, "BT-111": amount_text(home.amount, minor_digits(home.currency))}
    return terms


def _tax_row(row: TaxRow, paper: InvoicePaper) -> Terms:
    terms: Terms = {
        "BT-116": amount_text(row.taxable, paper.digits),
        "BT-117": amount_text(row.tax, paper.digits),
        "BT-118": row.category,
        "BT-119": _percent(row.category, row.percent),
        "BT-7": paper.tax_point,  # because: CII tells the tax point in each row
    }
    if row.category in NEEDS_A_REASON:
        terms["BT-120"], terms["BT-121"] = reason_and_code(row.category, row.exempt_reason, row.exempt_code)
    return terms


def _percent(category: str, percent: Decimal) -> str:
    """Nothing outside of tax (BR-O-05), else the rate, which may be nought."""
    return "" if category == "O" else number_text(percent)


def _line(position: int, line: InvoiceLine, paper: InvoicePaper) -> Terms:
    """BG-25. A price is never negative (BR-27): the quantity carries the sign. A unit in words stands with the why."""
    sign = -1 if line.unit_price < 0 else 1
    is_code = line.unit in UNITS
    return {
        "BT-126": str(position),
        "BT-129": number_text(line.quantity * sign),
        "BT-130": line.unit if is_code else AGREED_UNIT,
        "BT-131": amount_text(line.net, paper.digits),
        "BT-146": number_text(line.unit_price * sign),
        "BT-151": line.tax_category,
        "BT-152": _percent(line.tax_category, line.tax_percent),
        "BT-153": line.description,
        "BT-154": line.why if is_code else f"{line.unit} {line.why}",
        "BG-27": [_line_allowance(line, paper.digits)] if line.allowance else [],
        **_done_on(line.done_on, paper.period),
    }


def _line_allowance(line: InvoiceLine, digits: int) -> Terms:
    base = round_money(line.quantity * line.unit_price, digits)
    return {
        "amount": amount_text(line.allowance, digits),
        "reason": xml_text(line.allowance_reason) or "Discount",
        **_share(line.allowance_percent, base, digits),
    }


def _done_on(day: date | None, period: tuple[date, date] | None) -> Terms:
    """The day of the work, where it lies in the period of the whole."""
    if day is None or (period and not period[0] <= day <= period[1]):
        return {}
    return {"BT-134": day, "BT-135": day}
