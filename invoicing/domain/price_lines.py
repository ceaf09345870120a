"""One charge becomes its lines: steps, what was agreed with the farm, tax."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from invoicing.domain.agreed_prices import AgreementKind, agreed_for
from invoicing.domain.charges import Charge, shortened
from invoicing.domain.price_book import PriceBook
from invoicing.domain.price_steps import PriceStep, StepPart, step_parts
from invoicing.domain.pricing import DraftLine, PriceItem
from trimops.kernel.money import round_money


def listed_lines(charge: Charge, book: PriceBook) -> list[DraftLine]:
    """The lines of a charge; none where it costs nothing anyway. NoPrice where the list has no price for it."""
    if charge.is_free:
        return _free_line(charge, book)
    own = agreed_for(charge.item, book.agreed)
    if own is not None and own.kind is AgreementKind.PRICE:
        why = f"{charge.why}; agreed: {own.why}{_list_price(charge, book)}"
        return [one_line(charge, book, charge.quantity, own.amount, charge.keys, why)] if own.amount else []
    parts = [part for part in _parts(charge, book) if part.unit_price]
    return [
        one_line(charge, book, part.quantity, part.unit_price, keys, _with(charge.why, part.words))
        for part, keys in _keys_shared(charge.keys, parts)
    ]


def one_line(
    charge: Charge,
    book: PriceBook,
    quantity: Decimal,
    unit_price: Decimal,
    keys: tuple[str, ...],
    why: str = "",
) -> DraftLine:
    """A line with the item's tax, and the percent off that was agreed as its allowance."""
    tax, item = book.tax_of(charge.item), charge.item
    own = agreed_for(item, book.agreed)
    percent = (
        own.amount
        if own is not None and own.kind is AgreementKind.PERCENT and item is not PriceItem.MINIMUM
        else None
    )
    off = round_money(quantity * unit_price * (percent or 0) / 100, book.digits)
    return DraftLine(
        item=item,
        description=f"{item.label}, under guarantee" if charge.is_free else item.label,
        quantity=quantity,
        unit=item.unit,
        unit_price=unit_price,
        tax_category=tax.category,
        tax_percent=tax.percent,
        why=shortened(why or charge.why),
        tax_reason=tax.reason,
        tax_reason_code=tax.reason_code,
        allowance=off,
        allowance_percent=percent if off else None,
        allowance_reason=own.why if own is not None and off else "",
        visit_id=charge.work.visit_id,
        done_on=charge.work.day,
        keys=keys,
    )


def price_off(item: PriceItem, amount: Decimal, book: PriceBook) -> tuple[Decimal, str]:
    """`amount` as agreed with the farm for that item, and how that came about ("" where nothing was agreed)."""
    own = agreed_for(item, book.agreed)
    if own is None:
        return amount, ""
    agreed = own.amount if own.kind is AgreementKind.PRICE else amount * (100 - own.amount) / 100
    return round_money(agreed, book.digits), f" ({own.why})"


def _free_line(charge: Charge, book: PriceBook) -> list[DraftLine]:
    steps = book.prices.get(charge.item, ())
    if not any(step.unit_price for step in steps):
        return []
    return [one_line(charge, book, charge.quantity, Decimal(0), charge.keys)]


def _parts(charge: Charge, book: PriceBook) -> list[StepPart]:
    if charge.amount is not None:
        return [StepPart(charge.quantity, charge.amount)]
    return step_parts(charge.quantity, book.steps_of(charge.item), book.step_rule)


def _list_price(charge: Charge, book: PriceBook) -> str:
    steps: Sequence[PriceStep] = book.prices.get(charge.item, ())
    if charge.amount is not None:
        steps = (PriceStep(1, charge.amount),)
    if not steps:
        return ""
    parts = step_parts(charge.quantity, steps, book.step_rule)
    return f"; list price {' and '.join(str(round_money(part.unit_price, book.digits)) for part in parts)}"


def _with(why: str, words: str) -> str:
    return f"{words}; {why}" if words else why


def _keys_shared(
    keys: tuple[str, ...], parts: Sequence[StepPart]
) -> Iterator[tuple[StepPart, tuple[str, ...]]]:
    """Where each key is one unit, a slice has as many as it counts; else the first has them all.

    A line without any key would be billed again and again, so slices after that are named after the first key.
    """
    countable = sum(part.quantity for part in parts) == len(keys)
    rest = keys
    for number, part in enumerate(parts, start=1):
        taken = int(part.quantity) if countable else len(rest)
        yield part, rest[:taken] or (f"{keys[0]}/{number}",)
        rest = rest[taken:]
