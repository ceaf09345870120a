"""What a visit uses up once, however many cows it has, as lines of the stock ledger."""

from datetime import datetime

from visits.domain.kit.stock_kinds import UseOf
from visits.domain.kit.use_rules import used_by_visit
from visits.models import StockMovement, Visit
from visits.selectors.kit.recipes import recipes_of
from visits.services.kit.book_uses import Booked, Booking, UseAt, book_uses
from visits.services.kit.stock_place import stock_place_of


def use_visit_kit(*, visit: Visit, at: datetime) -> None:
    """Book it at the finish, by the recipes of that moment, and never again: a recipe changed later changes nothing.

    Call it with the visit locked and finished; one that is called off never comes here.
    """
    if StockMovement.objects.within(visit.scope).filter(visit=visit, use_of=UseOf.VISIT).exists():
        return
    place = stock_place_of(visit).pk
    uses = used_by_visit(recipes_of(visit.scope))
    wanted = {UseAt(item, place, at): quantity for item, quantity in uses.items()}
    book_uses(booking=Booking(visit, UseOf.VISIT, wanted, at), booked=Booked())
