"""What a visit uses that nobody has booked yet."""

from collections.abc import Mapping
from datetime import date

import numpy as np

from visits.domain.kit.forecast.amounts import Amounts
from visits.domain.kit.forecast.lattice import laid_on
from visits.domain.kit.forecast.past_work import Usual
from visits.domain.kit.forecast.spread import Floats
from visits.domain.kit.forecast.use_model import UseModel
from visits.domain.kit.forecast.visit_use import BookedVisit
from visits.domain.visit_states import VisitReason

WORTH = 5.0
"""Visits: so much counts what the rates tell of a usual visit, beside those seen (no source)."""
SOME_DAY = date.min
NO_FARM = -1


def open_sizes(
    model: UseModel, used: Mapping[VisitReason, Amounts], usual: Mapping[VisitReason, Usual]
) -> dict[VisitReason, Floats]:
    """By reason, the cells of what such a visit uses: as often as seen (`used`), after a `usual` one by the rates."""
    return {reason: _cells(model, used[reason], reason, visit) for reason, visit in usual.items()}


def _cells(model: UseModel, used: Amounts, reason: VisitReason, usual: Usual) -> Floats:
    booked = BookedVisit(NO_FARM, SOME_DAY, None, usual.heads, usual.corrective, reason)
    told = model.made_cells(booked)
    if not used:
        return told
    seen = laid_on(used, model.step)
    last = seen.first + len(seen.chances)
    found = np.zeros(max(len(told), last))
    share = WORTH / (WORTH + used.weight)
    found[: len(told)] += told * share
    found[seen.first : last] += seen.chances * (1 - share)
    return found
