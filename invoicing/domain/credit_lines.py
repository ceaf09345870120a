"""What a credit note takes back of an invoice, so that all of them together never take back more than there was.

Every amount is positive, as on the invoice. Discounts and charges on the whole go back with the lines they belong to,
in proportion; who takes back the last of a rate takes back what is left of them, so no cent stays.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from invoicing.domain.amounts import AmountLine, RoundingRule, WholeAmount, invoice_amounts, line_net
from trimops.kernel.money import round_money

ZERO = Decimal(0)
Rate = tuple[str, Decimal]


@dataclass(frozen=True)
class CreditAsk:
    """Take back of that line: so many (`quantity`), or so much without tax (`amount`); neither: all that is left."""

    line_id: int
    quantity: Decimal | None = None
    amount: Decimal | None = None


@dataclass(frozen=True)
class CreditableLine:
    """A line of the invoice, or of a credit note of it (then `line_id` is the key of the line it takes back)."""

    line_id: int
    quantity: Decimal
    unit_price: Decimal
    allowance: Decimal
    tax_category: str
    tax_percent: Decimal
    net: Decimal

    @property
    def rate(self) -> Rate:
        return self.tax_category, self.tax_percent


@dataclass(frozen=True)
class CreditableWhole:
    """A discount or charge on the whole. `key` tells those of one invoice apart and is kept on its credit notes."""

    key: str
    is_charge: bool
    amount: Decimal
    tax_category: str
    tax_percent: Decimal

    @property
    def rate(self) -> Rate:
        return self.tax_category, self.tax_percent


@dataclass(frozen=True)
class Creditable:
    """An invoice, or what its credit notes took back so far. `total`: with tax and rounding, nothing prepaid off."""

    lines: tuple[CreditableLine, ...]
    whole: tuple[CreditableWhole, ...] = ()
    total: Decimal = ZERO


@dataclass(frozen=True)
class Credit:
    """What the credit note holds. `rounding` brings the last one to the cent that is left (BT-114).

    `whole_lines`: keys of the lines of which nothing is left after it.
    """

    lines: tuple[CreditableLine, ...]
    whole: tuple[CreditableWhole, ...]
    rounding: Decimal
    whole_lines: frozenset[int]


class TooMuchCredit(ValueError):
    """More is asked back than is left."""


def lines_left(invoice: Creditable, taken: Creditable) -> dict[int, CreditableLine]:
    """What is left of each line by its key; a line of which nothing is left is not in it.

    Quantities count where the price is that of the line: an amount taken back is no quantity.
    """
    left = {}
    for line in invoice.lines:
        back = [one for one in taken.lines if one.line_id == line.line_id]
        net = line.net - sum((one.net for one in back), ZERO)
        of_price = [one for one in back if one.unit_price == line.unit_price]
        quantity = line.quantity - sum((one.quantity for one in of_price), ZERO)
        allowance = line.allowance - sum((one.allowance for one in of_price), ZERO)
        if net > 0 or (not back and line.net == 0):
            left[line.line_id] = replace(line, net=net, quantity=quantity, allowance=allowance)
    return left


def credit_of(
    invoice: Creditable,
    taken: Creditable,
    asks: Sequence[CreditAsk] | None,
    digits: int = 2,
    rule: RoundingRule = RoundingRule.PER_RATE,
) -> Credit:
    """The credit for these lines, or (None) for all that is left. TooMuchCredit names what is asked too much.

    Everything at once has the lines of the invoice, so its tax is the same in each rate, to the cent.
    """
    left = lines_left(invoice, taken)
    wanted = asks if asks is not None else [CreditAsk(key) for key in left]
    lines = tuple(_line(left, ask, digits) for ask in wanted)
    gone = _nets_by_line([*taken.lines, *lines])
    full = frozenset(line.line_id for line in invoice.lines if gone.get(line.line_id, ZERO) >= line.net)
    whole = _whole(invoice, taken, lines, digits)
    is_last = full == {line.line_id for line in invoice.lines}
    difference = _over(invoice, taken, lines, whole, digits, rule)
    rounding = difference if is_last else min(difference, ZERO)
    return Credit(lines, whole, rounding, full & {line.line_id for line in lines})


def _line(left: Mapping[int, CreditableLine], ask: CreditAsk, digits: int) -> CreditableLine:
    line = left.get(ask.line_id)
    if line is None:
        raise TooMuchCredit("Nothing is left to credit of that line.")
    if ask.amount is not None:
        return _of_amount(line, ask.amount)
    quantity = line.quantity if ask.quantity is None else ask.quantity
    if quantity == line.quantity:
        return _rest(line, digits)
    if not ZERO < quantity < line.quantity:
        raise TooMuchCredit(f"Of that line {line.quantity.normalize():f} are left to credit.")
    allowance = round_money(line.allowance * quantity / line.quantity, digits)
    net = line_net(quantity, line.unit_price, digits, allowance)
    if net > line.net:
        return _of_amount(line, line.net)
    return replace(line, quantity=quantity, allowance=allowance, net=net)


def _of_amount(line: CreditableLine, amount: Decimal) -> CreditableLine:
    if not ZERO < amount <= line.net:
        raise TooMuchCredit(f"Of that line {line.net} is left to credit, without tax.")
    return replace(line, quantity=Decimal(1), unit_price=amount, allowance=ZERO, net=amount)


def _rest(line: CreditableLine, digits: int) -> CreditableLine:
    """All that is left of the line: its quantity, with the allowance that makes the net come out."""
    allowance = line_net(line.quantity, line.unit_price, digits) - line.net
    if allowance == line.allowance:
        return line
    if allowance < 0 or line.quantity <= 0:
        return _of_amount(line, line.net)
    return replace(line, allowance=allowance)


def _nets_by_line(lines: Iterable[CreditableLine]) -> dict[int, Decimal]:
    nets: dict[int, Decimal] = {}
    for line in lines:
        nets[line.line_id] = nets.get(line.line_id, ZERO) + line.net
    return nets


def _nets_by_rate(lines: Iterable[CreditableLine]) -> dict[Rate, Decimal]:
    nets: dict[Rate, Decimal] = {}
    for line in lines:
        nets[line.rate] = nets.get(line.rate, ZERO) + line.net
    return nets


def _whole(
    invoice: Creditable, taken: Creditable, lines: Sequence[CreditableLine], digits: int
) -> tuple[CreditableWhole, ...]:
    """The share of each discount and charge on the whole that goes back with these lines."""
    had, now = _nets_by_rate(invoice.lines), _nets_by_rate(lines)
    back = _nets_by_rate(taken.lines)
    is_last = sum(had.values(), ZERO) == sum(now.values(), ZERO) + sum(back.values(), ZERO)
    shares = []
    for part in invoice.whole:
        gone = sum((one.amount for one in taken.whole if one.key == part.key), ZERO)
        net, all_of_it = now.get(part.rate, ZERO), had.get(part.rate, ZERO)
        if is_last or (net and net + back.get(part.rate, ZERO) == all_of_it):
            amount = part.amount - gone
        else:
            share = round_money(part.amount * net / all_of_it, digits) if all_of_it else ZERO
            amount = min(share, part.amount - gone)
        if amount > 0:
            shares.append(replace(part, amount=amount))
    return tuple(shares)


def _over(
    invoice: Creditable,
    taken: Creditable,
    lines: Sequence[CreditableLine],
    whole: Sequence[CreditableWhole],
    digits: int,
    rule: RoundingRule,
) -> Decimal:
    """What is left of the total beyond what these come to; below nought where tax was rounded up too often."""
    asked = [
        AmountLine(one.quantity, one.unit_price, one.tax_category, one.tax_percent, one.allowance)
        for one in lines
    ]
    parts = [WholeAmount(one.is_charge, one.amount, one.tax_category, one.tax_percent) for one in whole]
    return invoice.total - taken.total - invoice_amounts(asked, parts, digits, rule).gross
