"""The QR code of a credit transfer in euro: "Quick Response Code: Guidelines to Enable Data Capture for the Initiation
of a SEPA Credit Transfer", European Payments Council EPC069-12, as segno writes it (version 002, level M).
"""

from collections.abc import Iterator, Sequence
from decimal import Decimal

import segno
from reportlab.lib.colors import black
from reportlab.platypus import Flowable
from segno.helpers import make_epc_qr

from invoicing.documents.invoice_content import Payment

LEAST = Decimal("0.01")
MOST = Decimal("999999999.99")
_LONGEST_NAME = 70
_LONGEST_TEXT = 140
_UTF_8 = 1


class QrBlock(Flowable):
    """A QR code as squares of ink, `side` points wide without the quiet zone, which is the page's own white."""

    def __init__(self, rows: Sequence[bytearray], side: float) -> None:
        super().__init__()
        self.rows = rows
        self.width = self.height = side

    def wrap(self, _available_width: float, _available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        canvas = self.canv
        count = len(self.rows)
        canvas.saveState()
        canvas.scale(self.width / count, self.height / count)
        canvas.setFillColor(black)
        # One path of whole numbers: no seams between the squares, and no formatting of hundreds of figures.
        squares = [
            f"{first} {count - 1 - row} {wide} 1 re"
            for row, modules in enumerate(self.rows)
            for first, wide in dark_runs(modules)
        ]
        canvas._code.append(" ".join([*squares, "f"]))  # type: ignore[attr-defined]
        canvas.restoreState()


def transfer_qr(payment: Payment, amount: Decimal, side: float) -> QrBlock | None:
    """The code for that amount in euro; None where the guidelines have no way to say it (amount, name, no account)."""
    name = " ".join(payment.account_name.split())[:_LONGEST_NAME].rstrip()
    text = payment.reference[:_LONGEST_TEXT]
    if not (payment.iban and name and LEAST <= amount <= MOST and (payment.creditor_reference or text)):
        return None
    return QrBlock(_code(payment, name, text, amount).matrix, side)


def _code(payment: Payment, name: str, text: str, amount: Decimal) -> segno.QRCode:
    return make_epc_qr(
        name=name,
        iban=payment.iban.replace(" ", ""),
        amount=amount,
        reference=payment.creditor_reference.replace(" ", "") or None,
        text=None if payment.creditor_reference else text,
        bic=payment.bic.replace(" ", "") or None,
        encoding=_UTF_8,
    )


def dark_runs(modules: Sequence[int]) -> Iterator[tuple[int, int]]:
    """(first, how many) of the dark modules that lie side by side in one row."""
    first: int | None = None
    for place, dark in enumerate([*modules, 0]):
        if dark and first is None:
            first = place
        elif not dark and first is not None:
            yield first, place - first
            first = None
