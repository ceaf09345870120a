"""Background jobs of the work. Each loads its row, takes the scope from it and calls one service."""

from celery import shared_task
from django.conf import settings
from django.utils import timezone

from trimops.accounts.models import Business
from trimops.jobs import Job
from trimops.kernel.clock import is_night, local_day
from trimops.kernel.scope import Scope
from trimops.tenancy.unscoped import unscoped
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import Visit, WeekPlan
from visits.selectors.places_in_work import places_in_work
from visits.services.expire_offers import expire_offers
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.give_reasons import give_reasons
from visits.services.issue_finish_report import issue_finish_report
from visits.services.learn_roads import learn_roads
from visits.services.learn_visit_lengths import learn_visit_lengths
from visits.services.prove_week_plan import PROVE_SECONDS, prove_week_plan
from visits.services.replan_week import REPLAN_SECONDS
from visits.services.sweep_rechecks import sweep_rechecks, sweep_routine
from visits.services.sweep_roads import sweep_roads
from visits.services.tell_lengths_anew import tell_lengths_anew
from visits.services.think_replan import think_replan
from visits.services.think_week_plan import think_week_plan


@shared_task(name=Job.BOOK_RECHECKS)
def book_rechecks_task(visit_id: int) -> None:
    with unscoped("a job is handed one row"):
        visit = Visit.objects.select_related("farm__business").get(pk=visit_id)
    now = timezone.now()
    gather_farm_rechecks(farm=visit.farm, today=local_day(now, visit.farm.business.zone), at=now)


@shared_task(name=Job.ISSUE_REPORT)
def issue_report_task(visit_id: int) -> None:
    with unscoped("a job is handed one row"):
        visit = Visit.objects.select_related("farm__business").get(pk=visit_id)
    issue_finish_report(visit=visit, at=timezone.now())


@shared_task(name=Job.SWEEP_RECHECKS)
def sweep_rechecks_task() -> None:
    """Ticks every hour; each business is swept in the hour when its own night has come, of held hours in each."""
    now = timezone.now()
    for business in Business.objects.order_by("id"):
        expire_offers(scope=Scope(business.pk), at=now)
        if is_night(now, business.zone):
            today = local_day(now, business.zone)
            sweep_rechecks(scope=Scope(business.pk), today=today, at=now)
            sweep_routine(scope=Scope(business.pk), today=today, at=now)


@shared_task(name=Job.LEARN_ROADS)
def learn_roads_task(visit_id: int) -> None:
    with unscoped("a job is handed one row"):
        visit = Visit.objects.select_related("business").get(pk=visit_id)
    learn_roads(business=visit.business, places=places_in_work(visit.scope), at=timezone.now())


@shared_task(name=Job.SWEEP_ROADS)
def sweep_roads_task() -> None:
    now = timezone.now()
    for business in Business.objects.order_by("id"):
        sweep_roads(scope=Scope(business.pk), at=now)


@shared_task(name=Job.LEARN_LENGTHS)
def learn_lengths_task() -> None:
    """Ticks every hour; each business's lengths are learned in the hour of its own night, before it is swept."""
    now = timezone.now()
    for business in Business.objects.order_by("id"):
        if is_night(now, business.zone):
            learn_visit_lengths(business=business, at=now)
            tell_lengths_anew(scope=Scope(business.pk))


@shared_task(name=Job.PLAN_WEEK)
def plan_week_task(week_plan_id: int) -> None:
    with unscoped("a job is handed one row"):
        week_plan = WeekPlan.objects.select_related("business").get(pk=week_plan_id)
    limits = SolveLimits(seconds=settings.PLAN_SECONDS)
    think_week_plan(week_plan=week_plan, limits=limits, at=timezone.now())


@shared_task(name=Job.REPLAN_WEEK)
def replan_week_task(week_plan_id: int) -> None:
    with unscoped("a job is handed one row"):
        week_plan = WeekPlan.objects.select_related("business").get(pk=week_plan_id)
    think_replan(week_plan=week_plan, limits=SolveLimits(seconds=REPLAN_SECONDS), at=timezone.now())


@shared_task(name=Job.GIVE_REASONS)
def give_reasons_task(week_plan_id: int) -> None:
    with unscoped("a job is handed one row"):
        week_plan = WeekPlan.objects.get(pk=week_plan_id)
    give_reasons(week_plan=week_plan)


@shared_task(name=Job.PROVE_WEEK)
def prove_week_task(week_plan_id: int) -> None:
    with unscoped("a job is handed one row"):
        week_plan = WeekPlan.objects.get(pk=week_plan_id)
    prove_week_plan(week_plan=week_plan, seconds=PROVE_SECONDS)
