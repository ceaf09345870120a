"""An order as text: to copy, or for the business's own mail program."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from urllib.parse import quote

from visits.domain.kit.stock_kinds import Unit

ONE = Decimal(1)


@dataclass(frozen=True)
class OrderedLine:
    """So many packs of one thing; `size` may be empty."""

    name: str
    size: str
    unit: Unit
    pack: Decimal
    packs: int

    @property
    def quantity(self) -> Decimal:
        return self.pack * self.packs


def line_text(line: OrderedLine) -> str:
    """`2 packs of 40: Wooden block, 130 mm`; without packs `5 of: ...`, and with the unit where it is measured."""
    name = f"{line.name}, {line.size}" if line.size and line.size not in line.name else line.name
    unit = "" if line.unit is Unit.EACH else f" {'pairs' if line.unit is Unit.PAIR else line.unit.label}"
    if line.pack == ONE:
        return f"{line.packs}{unit} of {name}"
    packs = "pack" if line.packs == 1 else "packs"
    return f"{line.packs} {packs} of {_plain(line.pack)}{unit}: {name}"


def order_text(lines: Sequence[OrderedLine], business: str, wanted: date | None) -> str:
    """The whole order, lines parted by newlines; `wanted` is the day by which it is needed."""
    parts = ["Please send us:", "", *(f"- {line_text(line)}" for line in lines), ""]
    if wanted is not None:
        parts += [f"We need it by {wanted.day} {wanted:%B %Y}.", ""]
    return "\n".join([*parts, business])


def mail_address(email: str, subject: str, text: str) -> str:
    """A `mailto:` address with subject and text ready (RFC 6068: lines end in CR LF, signs are percent-encoded).

    The business's own mail program sends it.
    """
    body = quote(text.replace("\n", "\r\n"), safe="")
    return f"mailto:{quote(email, safe='@')}?subject={quote(subject, safe='')}&body={body}"


def _plain(amount: Decimal) -> str:
    return f"{amount.normalize():f}"
