"""A business sets its own figures."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from django.db import transaction

from trimops.accounts.models import Business
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.kit.kit_figures import KitFigures
from visits.domain.own_figures import FigureRefused
from visits.domain.planning_figures import PlanningFigures
from visits.domain.recheck_due import FigureOutOfRange, RecheckFigures
from visits.domain.trim_figures import TrimFigures
from visits.domain.visit_length import LengthFigures
from visits.models import BusinessFigures


class FigureMakesNoSense(RuleBroken):
    """The message names the figure and says what to mend."""

    code = "figure_makes_no_sense"


@dataclass(frozen=True)
class OwnFigures:
    """What differs from the defaults, by the names of the domain's figures."""

    visit_length: Mapping[str, object]
    rechecks: Mapping[str, object]
    planning: Mapping[str, object]
    trim: Mapping[str, object] = field(default_factory=dict)
    kit: Mapping[str, object] = field(default_factory=dict)


@transaction.atomic
def set_figures(*, business: Business, figures: OwnFigures) -> BusinessFigures:
    """Keep them all, or none and FigureMakesNoSense."""
    try:
        LengthFigures.from_overrides(figures.visit_length)
        RecheckFigures.from_overrides(figures.rechecks)
        PlanningFigures.from_overrides(figures.planning)
        TrimFigures.from_overrides(figures.trim)
        KitFigures.from_overrides(figures.kit)
    except (FigureRefused, FigureOutOfRange) as fault:
        raise FigureMakesNoSense(str(fault)) from fault
    rows = BusinessFigures.objects.within(Scope(business.pk))
    row = rows.select_for_update().first() or BusinessFigures(business=business)
    row.visit_length, row.rechecks = dict(figures.visit_length), dict(figures.rechecks)
    row.planning, row.trim, row.kit = dict(figures.planning), dict(figures.trim), dict(figures.kit)
    row.full_clean()
    row.save()
    return row
