"""What a van's trimmer is told of an evening, as values."""

from datetime import datetime, timedelta

from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from visits.documents.evening_mail import EveningMail, RoundStop
from visits.domain.cautions import ALONE
from visits.domain.kit.tonight import EveningJob, EveningTask, evening_title
from visits.models import Van
from visits.selectors.day_arrivals import StopArrival, arrivals_of
from visits.selectors.day_sheet_content import load_for, numbers_of
from visits.selectors.kit.tonight import Tonight

OF_ONE_VAN = (EveningJob.LOAD, EveningJob.WARM, EveningJob.GRIND)


def evening_content(business: Business, van: Van, tonight: Tonight, now: datetime) -> EveningMail:
    """Of one van in use; `tonight` is the list for all of them, asked once."""
    day = local_day(now, business.zone) + timedelta(days=1)
    arrivals = arrivals_of(business, van, day, now)
    stops = arrivals.stops if arrivals else ()
    farms = [stop.visit.farm for stop in stops]
    numbers = numbers_of(van.scope, farms) if farms else {}
    tasks = [task for task in tonight.tasks if _is_for(task, van)]
    return EveningMail(
        van=van.name,
        day=day,
        title=evening_title(tasks),
        stops=[_stop(stop, business, numbers.get(stop.visit.farm_id, "")) for stop in stops],
        tonight=[(f"{task.job.label}: {_about(task, van)}", task.why) for task in tasks],
        load=list(load_for(farms)),
        caution=ALONE,
    )


def _is_for(task: EveningTask, van: Van) -> bool:
    """Other vans' loading and washing is other people's."""
    if task.job in OF_ONE_VAN:
        return task.key == van.pk
    return task.job is not EveningJob.WASH or task.name in (van.name, "Crush")


def _about(task: EveningTask, van: Van) -> str:
    return task.what if task.name == van.name else f"{task.name}, {task.what}"


def _stop(stop: StopArrival, business: Business, ring: str) -> RoundStop:
    visit = stop.visit
    farm, start = visit.farm, visit.planned_start or visit.asked_at
    return RoundStop(
        start=start.astimezone(business.zone),
        farm=farm.name,
        address=farm.address,
        cows=visit.head_count,
        lame=visit.corrective_count,
        hygiene=farm.hygiene_level,
        hygiene_words=f"{farm.hygiene_level}, {farm.get_hygiene_level_display().lower()}",
        ring=ring,
        way_in=farm.access_notes,
        note=visit.note,
        tight=stop.in_time_percent if stop.is_tight else None,
    )
