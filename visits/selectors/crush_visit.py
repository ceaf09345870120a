"""The visit and its farm as the phone at the crush must know them."""

from datetime import datetime

from farms.domain.handling import CrushPlace, PowerSupply
from farms.models import Contact, Farm
from trimops.kernel.scope import Scope
from visits.models import Visit
from visits.selectors.before_visit import visit_day
from visits.selectors.done_by import done_by


def visit_paper(scope: Scope, visit: Visit) -> dict[str, object]:
    """When, why, how many cows, and the milking it must be clear of."""
    zone = visit.business.zone
    return {
        "id": visit.pk,
        "uid": str(visit.uid),
        "reason": visit.reason,
        "reason_label": visit.get_reason_display(),
        "state": visit.state,
        "day": visit_day(visit).isoformat(),
        "planned_start": wire_time(visit.planned_start),
        "planned_finish": wire_time(visit.planned_finish),
        "started_at": wire_time(visit.started_at),
        "finished_at": wire_time(visit.finished_at),
        "head_count": visit.head_count,
        "note": visit.note,
        "zone": str(zone),
        "done_by": wire_time(done_by(scope, visit, zone)),
    }


def farm_paper(scope: Scope, farm: Farm) -> dict[str, object]:
    """Where it is, how to get in, whom to ring, what there is to work with."""
    contacts = Contact.objects.within(scope).filter(farm=farm)
    return {
        "id": farm.pk,
        "name": farm.name,
        "address": farm.address,
        "access_notes": farm.access_notes,
        "phone": farm.phone,
        "latitude": float(farm.latitude),
        "longitude": float(farm.longitude),
        "hygiene_level": farm.hygiene_level,
        "hygiene_label": farm.get_hygiene_level_display(),
        "hygiene_reason": farm.hygiene_reason,
        "wash_rule": farm.wash_rule,
        "contacts": [{"name": c.name, "part": c.part, "phone": c.phone} for c in contacts],
        "set_up": _set_up(farm),
    }


def wire_time(at: datetime | None) -> str | None:
    """An instant as it goes over the wire."""
    return at.isoformat() if at else None


def _set_up(farm: Farm) -> list[str]:
    return [
        "Crush brought" if farm.crush_place == CrushPlace.BROUGHT else "Crush on the farm",
        "Hard standing" if farm.has_hard_standing else "No hard standing",
        "Water and hose" if farm.has_water else "No water",
        "Light" if farm.has_light else "No light",
        PowerSupply(farm.power).label,
        farm.get_shelter_display(),
    ]
