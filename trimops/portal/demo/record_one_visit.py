"""One visit of the planned week is confirmed, made, finished and billed, at its planned hours."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from random import Random
from uuid import UUID

from invoicing.models import Invoice
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.crush_day import cows_for, entries_for
from trimops.portal.demo.demo_files import rates
from trimops.portal.demo.demo_people import cast
from trimops.portal.demo.sign_off_visit import sign_off_as_by_phone
from visits.domain.referral import referrals_for
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Visit
from visits.services.confirm_visit import confirm_visit
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.record_trim import CrushRecord, record_trim
from visits.services.start_visit import start_visit


class NothingPlanned(RuleBroken):
    """The plan holds no visit that could be made."""

    code = "nothing_planned"


@dataclass(frozen=True)
class MadeVisit:
    """What became of it."""

    visit: Visit
    cows: int
    recheck_visits: int
    invoice: Invoice


def choose_visit(crew: Crew, planned: set[int]) -> Visit:
    """The first routine visit of the week with a dozen cows, else the one with most cows."""
    rows = Visit.objects.within(Scope(crew.business.pk)).in_state(VisitState.PLANNED)
    rows = rows.filter(pk__in=planned).select_related("farm__business", "business", "van__trimmer")
    visits = list(rows.order_by("planned_start"))
    if not visits:
        raise NothingPlanned("The plan of the week holds no visit: choose more farms or more months.")
    full = [v for v in visits if v.reason == VisitReason.ROUTINE and v.head_count >= 12]
    return full[0] if full else max(visits, key=lambda visit: visit.head_count)


def record_one_visit(crew: Crew, visit: Visit, at: datetime, seed: int) -> MadeVisit:
    """From the farm's yes to the invoice."""
    start = visit.planned_start or at
    by = visit.van.trimmer if visit.van else crew.people["owner"]
    visit = confirm_visit(visit=visit, at=at, by=crew.people["office"], note="by telephone")
    visit = start_visit(visit=visit, checked=True, at=start, by=by)
    chance, day = Random(seed), local_day(start, crew.business.zone)
    cows = cows_for(visit)
    entries = entries_for(visit, cows, rates(), chance, day)
    clock = start + timedelta(minutes=25)
    for cow, entry in zip(cows, entries, strict=True):
        told = cast().vet if referrals_for(entry) else ""
        record = CrushRecord(cow, entry, UUID(int=chance.getrandbits(128), version=4), clock, told)
        record_trim(visit=visit, record=record, by=by)
        clock += timedelta(minutes=chance.randint(6, 13))
    end = clock + timedelta(minutes=20)
    visit = sign_off_as_by_phone(visit, end, by)
    gathered = gather_farm_rechecks(farm=visit.farm, today=day, at=end)
    return MadeVisit(visit, len(cows), len(gathered), _bill(crew, visit, end, at))


def _bill(crew: Crew, visit: Visit, end: datetime, at: datetime) -> Invoice:
    """Issued on the demo's own day: after an invoice of next week's date none of today could be issued."""
    draft = draft_invoice(visit=visit, at=end)
    if draft is None:
        raise NothingPlanned("Nothing was done on the visit that is charged.")
    return issue_invoice(invoice=draft, at=at, by=crew.people["office"])
