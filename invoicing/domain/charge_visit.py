"""From the work of one visit to the lines that bill it, at what held on its day."""

from collections.abc import Iterator
from datetime import datetime

from invoicing.domain.amounts import line_net
from invoicing.domain.charges import Charge, piece_charges
from invoicing.domain.minimum_charge import missing_to_minimum
from invoicing.domain.out_of_hours import why_out_of_hours
from invoicing.domain.price_book import PriceBook
from invoicing.domain.price_lines import listed_lines, one_line, price_off
from invoicing.domain.pricing import DraftLine, PriceItem
from invoicing.domain.travel_charge import Travelled
from invoicing.domain.travel_lines import travel_charge
from invoicing.domain.visit_work import VisitWork, visit_key
from trimops.kernel.money import round_money


def charge_visit(
    work: VisitWork, book: PriceBook, started: datetime | None, travelled: Travelled | None
) -> list[DraftLine]:
    """Lines of one visit in the order of the price list; `started` on the wall clock of the business.

    - Pieces of work are counted by item, the steps of a price for this visit alone. NoPrice names work without a price.
    - Urgent and out-of-hours supplement, travel and the minimum go with the call-out: late work that is billed without
      a call-out is charged by itself. Call-out and supplements that have no price are not charged.
    - Work under guarantee is a line at nought that says so. A visit of nothing else is free altogether: no lines.
    - What is priced at nought is left off. The minimum is filled up after discounts.
    """
    charges = piece_charges(work, book.guarantee_days)
    if all(charge.is_free or charge.item is PriceItem.CALL_OUT for charge in charges):
        return []
    priced = [c for c in charges if c.item is not PriceItem.CALL_OUT or book.is_priced(PriceItem.CALL_OUT)]
    lines = [line for charge in priced for line in listed_lines(charge, book)]
    if any(piece.item is PriceItem.CALL_OUT for piece in work.pieces):
        for charge in _with_the_call_out(work, book, started, travelled):
            lines += listed_lines(charge, book)
        lines += _filled_up(work, book, lines)
    lines.sort(key=lambda line: tuple(PriceItem).index(line.item))
    return lines if any(line.unit_price for line in lines) else []


def _with_the_call_out(
    work: VisitWork, book: PriceBook, started: datetime | None, travelled: Travelled | None
) -> Iterator[Charge]:
    if work.is_urgent and book.is_priced(PriceItem.URGENT):
        yield _of_visit(work, PriceItem.URGENT, "asked for as urgent")
    out = why_out_of_hours(started, book.hours) if started else ""
    if out and book.is_priced(PriceItem.OUT_OF_HOURS):
        yield _of_visit(work, PriceItem.OUT_OF_HOURS, out)
    charge = travel_charge(work, book, travelled) if travelled else None
    if charge is not None:
        yield charge


def _of_visit(work: VisitWork, item: PriceItem, why: str) -> Charge:
    return Charge(work, item, why, (visit_key(work.uid, item),))


def _filled_up(work: VisitWork, book: PriceBook, lines: list[DraftLine]) -> list[DraftLine]:
    nets = [line_net(line.quantity, line.unit_price, book.digits, line.allowance) for line in lines]
    minimum, because = price_off(PriceItem.MINIMUM, book.minimum, book)
    missing = missing_to_minimum(minimum, nets)
    if not missing:
        return []
    why = f"the visit comes to {sum(nets)}, the minimum is {round_money(minimum, book.digits)}{because}"
    charge = _of_visit(work, PriceItem.MINIMUM, why)
    return [one_line(charge, book, charge.quantity, missing, charge.keys)]
