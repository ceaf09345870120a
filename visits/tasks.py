"""Background jobs of the work. Each loads its row, takes the scope from it and calls one service."""

from celery import shared_task
from django.conf import settings
from django.utils import timezone

from trimops.accounts.models import Business
from trimops.jobs import Job
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.tenancy.unscoped import unscoped
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import Visit, WeekPlan
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.sweep_rechecks import sweep_rechecks, sweep_routine
from visits.services.think_week_plan import think_week_plan

NIGHT_HOUR = 2


@shared_task(name=Job.BOOK_RECHECKS)
def book_rechecks_task(visit_id: int) -> None:
    with unscoped("a job is handed one row"):
        visit = Visit.objects.select_related("farm__business").get(pk=visit_id)
    now = timezone.now()
    gather_farm_rechecks(farm=visit.farm, today=local_day(now, visit.farm.business.zone), at=now)


@shared_task(name=Job.SWEEP_RECHECKS)
def sweep_rechecks_task() -> None:
    """Ticks every hour; each business is swept in the hour when its own night has come."""
    now = timezone.now()
    for business in Business.objects.order_by("id"):
        if now.astimezone(business.zone).hour == NIGHT_HOUR:
            today = local_day(now, business.zone)
            sweep_rechecks(scope=Scope(business.pk), today=today, at=now)
            sweep_routine(scope=Scope(business.pk), today=today, at=now)


@shared_task(name=Job.PLAN_WEEK)
def plan_week_task(week_plan_id: int) -> None:
    with unscoped("a job is handed one row"):
        week_plan = WeekPlan.objects.select_related("business").get(pk=week_plan_id)
    limits = SolveLimits(seconds=settings.PLAN_SECONDS)
    think_week_plan(week_plan=week_plan, limits=limits, at=timezone.now())
