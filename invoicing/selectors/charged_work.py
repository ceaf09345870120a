"""Work priced at what held on its day: the lines of a draft."""

from collections.abc import Sequence
from datetime import date
from zoneinfo import ZoneInfo

from farms.models import Farm
from invoicing.domain.charge_visit import charge_visit
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.price_book import PriceBook
from invoicing.domain.pricing import DraftLine, PriceItem
from invoicing.domain.travel_charge import Travelled, TravelRule
from invoicing.domain.visit_work import VisitWork
from invoicing.models import FarmTerms
from invoicing.selectors.price_book import price_book
from invoicing.selectors.round_of_day import travelled_for, visits_by_key
from trimops.kernel.scope import Scope
from visits.models import Visit


def charge_lines(
    scope: Scope, farm: Farm, work: Sequence[VisitWork], terms: FarmTerms | None = None
) -> list[DraftLine]:
    """Lines of these visits of one farm, in their order; each visit by itself, at the prices of its own day.

    Empty where nothing costs anything. NoPrice names what is missing, KeyError is a visit of another farm. See
    `charge_visit` for the rules.
    """
    if not work:
        return []
    books: dict[date, PriceBook] = {}
    digits = minor_digits(farm.business.currency)
    for one in work:
        if one.farm_id != farm.pk:
            raise KeyError(one.visit_id)
        if one.day not in books:
            books[one.day] = price_book(scope, farm, one.day, digits, terms)
    going = [one.visit_id for one in work if _is_charged_travel(one, books[one.day])]
    visits = visits_by_key(scope, going) if going else {}
    zone = farm.business.zone
    return [line for one in work for line in _lines(one, books[one.day], zone, visits.get(one.visit_id))]


def _is_charged_travel(work: VisitWork, book: PriceBook) -> bool:
    is_going_out = any(piece.item is PriceItem.CALL_OUT for piece in work.pieces)
    return is_going_out and book.travel.rule is not TravelRule.NONE


def _lines(work: VisitWork, book: PriceBook, zone: ZoneInfo, travels: Visit | None) -> list[DraftLine]:
    started = work.started_at.astimezone(zone) if work.started_at else None
    return charge_visit(work, book, started, _travelled(book, travels) if travels else None)


def _travelled(book: PriceBook, visit: Visit) -> Travelled:
    return travelled_for(visit, with_round=book.travel.rule is TravelRule.SHARED)
