"""A business's own figures, ready for the domain."""

from dataclasses import dataclass

from trimops.kernel.scope import Scope
from visits.domain.kit.kit_figures import KitFigures
from visits.domain.planning_figures import PlanningFigures
from visits.domain.recheck_due import RecheckFigures
from visits.domain.trim_figures import TrimFigures
from visits.domain.visit_length import LengthFigures
from visits.models import BusinessFigures


@dataclass(frozen=True)
class Figures:
    """All the figures a business may set for itself."""

    length: LengthFigures
    rechecks: RecheckFigures
    planning: PlanningFigures
    trim: TrimFigures
    kit: KitFigures


def figures_of(scope: Scope) -> Figures:
    """The business's own figures over the defaults; the defaults alone where it has set none."""
    row = BusinessFigures.objects.within(Scope(scope.business_id)).first() or BusinessFigures()
    return Figures(
        LengthFigures.from_overrides(row.visit_length),
        RecheckFigures.from_overrides(row.rechecks),
        PlanningFigures.from_overrides(row.planning),
        TrimFigures.from_overrides(row.trim),
        KitFigures.from_overrides(row.kit),
    )
