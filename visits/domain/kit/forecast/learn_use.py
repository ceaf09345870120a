"""Learn the use of one consumable from a business's own visits.

Method: a compound model, told exactly. A visit's use is the sum over the cows that use any, plus what the visit uses as
a whole. How many cows use some is beta-binomial, with the farm's own rate drawn towards the business's, for routine,
corrective and urgent cows apart (`cow_rates.py`); how much each of them uses is as often seen as it was (`lattice.py`).
How many cows come of those booked, and whether the visit is made, is learned as well (`head_drift.py`), and so is the
work that nobody has booked yet (`open_work.py`). Older visits weigh less (`past_work.py`). Before anything was seen the
recipe and published rates speak, and fade (`first_guess.py`).

Visits are taken as independent of each other, given the rates. When it must not be shown: as what a visit did use.
"""

from collections.abc import Sequence
from dataclasses import replace

from visits.domain.kit.forecast.first_guess import NO_GUESS, FirstGuess
from visits.domain.kit.forecast.lattice import common_step
from visits.domain.kit.forecast.learn_rates import learn_rates
from visits.domain.kit.forecast.open_sizes import open_sizes
from visits.domain.kit.forecast.open_work import OpenWork
from visits.domain.kit.forecast.past_work import PastWork, past_work
from visits.domain.kit.forecast.seen_sizes import seen_sizes
from visits.domain.kit.forecast.use_model import UseModel
from visits.domain.kit.forecast.visit_use import VisitUse


def learn_use(
    past: Sequence[VisitUse], guess: FirstGuess = NO_GUESS, work: PastWork | None = None
) -> UseModel:
    """What these visits teach, in any order; without any the guess alone speaks.

    `work` is `past_work` of all visits, where several consumables share it; `past` are then the last of them, in the
    same order: since the consumable is in use. ValueError where there are more of them.
    """
    work = past_work(past) if work is None else work.of_last(len(past))
    seen = seen_sizes(past, work.weight.tolist())
    step = common_step(seen.amounts(guess))
    model = UseModel(
        step=step,
        rates=learn_rates(work, seen.users, guess),
        size=seen.size_cells(guess, step),
        per_visit=seen.visit_cells(guess, step),
        heads=work.heads,
        open_work=OpenWork(),
        visits=sum(visit.is_made for visit in past),
    )
    sizes = open_sizes(model, seen.used, work.usual)
    return replace(model, open_work=OpenWork(work.weekdays, work.calls, sizes))
