"""How to pay: account, amount and reference in a frame, a QR code beside them in euro, the terms below."""

from decimal import Decimal

from reportlab.lib.colors import HexColor
from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Paragraph, Spacer, Table

from invoicing.documents.invoice_content import Payment
from invoicing.documents.qr_code import QrBlock, transfer_qr
from invoicing.domain.bank_account import in_fours
from trimops.paper.colours import HEX, Tint
from trimops.paper.figures import money
from trimops.paper.headings import heading
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.styles import SMALL, style, words
from trimops.paper.tables import Cell, bare_table

_QR = 30 * mm
_PAD = 3 * mm
_LABEL = 34 * mm
_SCAN = 40 * mm
_ROW = 17
# Four modules of a code of 33 or more (ISO/IEC 18004 asks for four all around).
_QUIET_ZONE = 4 * _QR / 33


def payment_slip(payment: Payment, amount: Decimal, currency: str, digits: int) -> list[Flowable]:
    """The slip for `amount`; nothing where there is nothing to pay, and no way to."""
    if amount <= 0:
        return []
    account = _account(payment)
    frame: list[Flowable] = []
    tall = 40.0
    if account:
        asked = [*account, ("Amount", money(amount, currency, digits)), *_reference(payment)]
        code = transfer_qr(payment, amount, _QR) if currency == "EUR" else None
        frame = [_framed(asked, code)]
        tall += max(_ROW * len(asked), _QR + _ROW if code else 0)
    said = [text for text in (payment.terms, payment.credit_terms) if text]
    tall += _ROW * len(said)
    below = [words(text, style(before=4)) for text in said]
    if not frame and not below:
        return []
    return [CondPageBreak(tall), heading("How to pay"), *frame, *below]


def _account(payment: Payment) -> list[tuple[str, str]]:
    """The IBAN with what belongs to it, then the details that say something else (a sort code, say).

    A line of details that is no pair, written before there were two columns, stands beside "Pay to".
    """
    details = [(what, value) if value else ("Pay to", what) for what, value in payment.details]
    if not payment.iban:
        return details
    facts = [
        ("Account name", payment.account_name),
        ("IBAN", in_fours(payment.iban)),
        ("BIC", payment.bic),
    ]
    told = [(what, value) for what, value in facts if value]
    known = {_bare(value) for _, value in told}
    return told + [(what, value) for what, value in details if _bare(value) not in known]


def _bare(text: str) -> str:
    return "".join(text.split()).casefold()


def _reference(payment: Payment) -> list[tuple[str, str]]:
    """The ISO 11649 reference where the account has an IBAN; elsewhere a payer's bank may have no room for it."""
    structured = in_fours(payment.creditor_reference) if payment.iban or not payment.reference else ""
    told = structured or payment.reference
    return [("Reference", told)] if told else []


def _framed(asked: list[tuple[str, str]], code: QrBlock | None) -> Table:
    rows = [[words(told, style(tint=Tint.QUIET)), words(value, style(bold=True))] for told, value in asked]
    inner = TEXT_WIDTH - 2 * _PAD - (_SCAN if code else 0)
    facts = bare_table(rows, [_LABEL, inner - _LABEL], pad=2)
    cells: list[Cell] = [facts, [code, Spacer(0, _QUIET_ZONE), _scan_words()]] if code else [facts]
    table = bare_table([cells], [inner + 2 * _PAD, _SCAN] if code else [TEXT_WIDTH], pad=_PAD)
    table.setStyle(
        [
            ("BOX", (0, 0), (-1, -1), 0.5, HexColor(HEX[Tint.RULE])),
            ("LEFTPADDING", (0, 0), (0, 0), _PAD),
        ]
    )
    return table


def _scan_words() -> Paragraph:
    return words("Scan with your bank’s app", style(SMALL, tint=Tint.QUIET))
