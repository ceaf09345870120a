"""The week as it stands, with what is known of each round: made once, asked for every request."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import inf

from visits.domain.planning.board import Board, Order
from visits.domain.planning.offers.guest import guest_of
from visits.domain.planning.offers.offer import Offer, by_weight
from visits.domain.planning.offers.offers_in import offers_in
from visits.domain.planning.offers.order_figures import OrderFigures


@dataclass
class StandingWeek:
    """`week` has one order per shift of the board. Jobs with a promise (`fixed`) are never moved."""

    board: Board
    week: Sequence[Order]
    _known: dict[tuple[int, Order], OrderFigures] = field(default_factory=dict)
    _elsewhere: dict[int, Offer | None] = field(default_factory=dict)

    def figures(self, shift: int) -> OrderFigures:
        """Of the shift as it stands."""
        return self.of_order(shift, tuple(self.week[shift]))

    def without(self, shift: int, job: int) -> OrderFigures:
        """Of the shift with that job taken out."""
        return self.of_order(shift, tuple(each for each in self.week[shift] if each != job))

    def of_order(self, shift: int, order: Order) -> OrderFigures:
        if (shift, order) not in self._known:
            self._known[shift, order] = OrderFigures(self.board, shift, order)
        return self._known[shift, order]

    def movable(self, shift: int) -> list[int]:
        """Jobs of that shift that nobody was promised an hour for."""
        return [job for job in self.week[shift] if self.board.problem.jobs[job].fixed is None]

    def shuffled(self, shift: int) -> dict[Order, int]:
        """Every other order of the shift that comes from moving one such job within it, with the job."""
        order = tuple(self.week[shift])
        found: dict[Order, int] = {}
        for job in self.movable(shift):
            rest = self.without(shift, job).order
            for at in range(len(order)):
                other = (*rest[:at], job, *rest[at:])
                if other != order and self.board.allowed(shift, other):
                    found.setdefault(other, job)
        return found

    def elsewhere(self, shift: int, job: int) -> Offer | None:
        """The place of least weight for a job of that shift in another one."""
        if job not in self._elsewhere:
            guest = guest_of(self.board, job)
            others = [other for other in self.board.homes[job] if other != shift]
            offers = [
                offer for other in others for offer in offers_in(self.board, self.figures(other), guest)
            ]
            self._elsewhere[job] = min(offers, key=by_weight, default=None)
        return self._elsewhere[job]

    @property
    def broken(self) -> list[int]:
        """Shifts whose round breaks a rule as it stands: nothing can be offered in them."""
        return [shift for shift in range(len(self.week)) if self.figures(shift).cost == inf]
