"""How much single cows and whole visits used, as often as it was seen.

A visit of which only the sum is known is read as so many cows using the usual measure each; what does not divide is
the visit's own.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

import numpy as np

from visits.domain.kit.forecast.amounts import Amounts
from visits.domain.kit.forecast.first_guess import WORTH_VISITS, FirstGuess
from visits.domain.kit.forecast.lattice import Cells, common_step, laid_on
from visits.domain.kit.forecast.spread import Floats
from visits.domain.kit.forecast.visit_use import VisitUse
from visits.domain.visit_states import VisitReason

SAME_REASON = 5.0
"""What visits for all reasons use as a whole counts as much as so many visits for the same reason."""
NOTHING = Decimal(0)


@dataclass(frozen=True)
class SeenSizes:
    """`sizes`: what a using cow used; `parts`: by reason, what a visit used as a whole; `users`: by visit, in order,
    the cows that used some; `used`: by reason, all that a visit used."""

    sizes: Amounts
    parts: Mapping[VisitReason, Amounts]
    used: Mapping[VisitReason, Amounts]
    users: tuple[int, ...]

    def amounts(self, guess: FirstGuess) -> Amounts:
        """All that was used at one time; what is guessed only where nothing was seen."""
        found = self.sizes.and_also(self._whole())
        found.pop(NOTHING, None)
        return found or Amounts([*guess.sizes, (guess.per_visit, 1.0)])

    def size_cells(self, guess: FirstGuess, step: Decimal) -> Floats:
        """The chances of what a using cow uses; one step where nothing is known."""
        guessed = Amounts(guess.sizes)
        found = self.sizes.and_also(guessed, 1 / guessed.weight) if guessed else self.sizes
        if not found:
            return np.array([0.0, 1.0])
        cells = laid_on(found, step)
        return np.concatenate([np.zeros(cells.first), cells.chances])

    def visit_cells(self, guess: FirstGuess, step: Decimal) -> dict[VisitReason, Cells]:
        """By reason, the chances of what a visit uses as a whole."""
        whole = self._whole().and_also(Amounts([(guess.per_visit, WORTH_VISITS)]))
        times = SAME_REASON / whole.weight
        return {reason: laid_on(self.parts[reason].and_also(whole, times), step) for reason in VisitReason}

    def _whole(self) -> Amounts:
        return Amounts(pair for part in self.parts.values() for pair in part.items())


def seen_sizes(past: Sequence[VisitUse], weights: Sequence[float]) -> SeenSizes:
    """Of visits that were made; `weights` say how much each counts."""
    measure = common_step(Amounts((visit.used, 1.0) for visit in past if visit.sizes is None))
    sizes = Amounts()
    users: list[int] = []
    parts = {reason: Amounts() for reason in VisitReason}
    used = {reason: Amounts() for reason in VisitReason}
    for visit, weight in zip(past, weights, strict=True):
        told = visit.sizes if visit.sizes is not None else _guessed(visit, measure)
        left, cows = visit.used, 0
        for size, number in told:
            if size > 0 and number > 0:
                sizes[size] += weight * number
                left -= size * number
                cows += number
        users.append(cows)
        # Where no cow was noted and nothing was used, nobody wrote anything down.
        if visit.is_made and (visit.cows or visit.used):
            parts[visit.reason][left] += weight
            used[visit.reason][max(visit.used, NOTHING)] += weight
    return SeenSizes(sizes, parts, used, tuple(users))


def _guessed(visit: VisitUse, measure: Decimal) -> tuple[tuple[Decimal, int], ...]:
    number = min(visit.cows, int(visit.used / measure)) if visit.used > 0 else 0
    return ((measure, number),)
