"""Everything that a day at the crush needs, in one answer, so that the phone can do without signal until evening."""

from dataclasses import asdict
from datetime import datetime

from trimops.accounts.models import User
from trimops.kernel.scope import Scope
from visits.domain.crush_catalogue import crush_catalogue
from visits.domain.mobility import MobilityScale
from visits.domain.recheck_figures import RecheckFigures
from visits.models import Visit
from visits.selectors.business_figures import Figures, figures_of
from visits.selectors.crush_blades import crush_blades
from visits.selectors.crush_cows import crush_cows
from visits.selectors.crush_kit import crush_kit
from visits.selectors.crush_list import crush_list
from visits.selectors.crush_visit import farm_paper, visit_paper
from visits.selectors.crush_writings import writings_of
from visits.selectors.lone_watch.open_watches import rules_in_use

FORMAT = "trimops-crush-papers/1"


def crush_papers(scope: Scope, visit: Visit, *, by: User, now: datetime) -> dict[str, object]:
    """The papers of one visit, JSON-ready, for the person `by`. The visit comes with its farm and business.

    The number of queries is the same for three cows and for six hundred.
    """
    business = visit.business
    listed, figures = crush_list(visit), figures_of(scope)
    written = writings_of(scope, visit, most=None)
    return {
        "format": FORMAT,
        "fetched_at": now.isoformat(),
        "seat": {
            "user": by.pk,
            "name": by.name,
            "business": business.pk,
            "business_name": business.name,
        },
        "visit": visit_paper(scope, visit),
        "farm": farm_paper(scope, visit.farm),
        "cows": crush_cows(scope, visit, listed, business.zone),
        "queue": [line.cow_id for line in listed],
        **crush_catalogue(),
        "scale": visit.mobility_scale or MobilityScale.UK.value,
        "figures": _figures(figures),
        "consumables": crush_kit(scope, visit),
        "is_watched": rules_in_use(scope) is not None,
        "blades": crush_blades(scope, visit, now, figures.kit),
        "written": written.rows,
        "cursor": written.cursor,
    }


def _figures(figures: Figures) -> dict[str, object]:
    return {"trim": asdict(figures.trim), "rechecks": _rechecks(figures.rechecks)}


def _rechecks(figures: RecheckFigures) -> dict[str, object]:
    return {
        "block": {kind.value: list(days) for kind, days in figures.block.items()},
        "lesion": {code.value: list(days) for code, days in figures.lesion.items()},
        "lame_trim": list(figures.lame_trim),
    }
