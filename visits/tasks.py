"""Background jobs of the work. Each loads its row, takes the scope from it and calls one service."""

from celery import shared_task
from django.conf import settings
from django.utils import timezone

from trimops.accounts.models import Business
from trimops.errands.does import does
from trimops.errands.row_of import row_of
from trimops.jobs import Job
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import Topic
from trimops.outbox.owners import OWNERS, Owner
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import OutsideCalendar, Van, Visit, WeekPlan
from visits.selectors.places_in_work import places_in_work
from visits.services.expire_offers import expire_offers
from visits.services.fetch_outside_calendar import fetch_outside_calendar
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.give_reasons import give_reasons
from visits.services.issue_finish_report import issue_finish_report
from visits.services.learn_roads import learn_roads
from visits.services.learn_visit_lengths import learn_visit_lengths
from visits.services.lone_watch.find_due_watches import find_due_watches
from visits.services.lone_watch.follow_message import follow_lost_call, renew_call_link
from visits.services.lone_watch.look_at_watch import look_at_watch
from visits.services.look_at_calendars import look_at_calendars
from visits.services.messages.look_at_delays import look_at_delays
from visits.services.messages.tell_delays import tell_delays
from visits.services.messages.tell_hour_news import tell_hour_news
from visits.services.messages.tell_next import tell_next
from visits.services.messages.tell_tomorrow import tell_tomorrow
from visits.services.propose_week import propose_week
from visits.services.prove_week_plan import PROVE_SECONDS, prove_week_plan
from visits.services.replan_week import REPLAN_SECONDS
from visits.services.send_invitations import send_invitations
from visits.services.sweep_rechecks import sweep_rechecks, sweep_routine
from visits.services.sweep_roads import sweep_roads
from visits.services.tell_evening import tell_evening
from visits.services.tell_lengths_anew import tell_lengths_anew
from visits.services.tell_proposal import tell_proposal
from visits.services.think_replan import think_replan
from visits.services.think_week_plan import think_week_plan

DIARY = "diary"
"""Jobs that want visits by rule come one after the other, or two would want the same one."""
THINKING_SECONDS = 24 * 60


@does(Job.BOOK_RECHECKS, alone=DIARY)
def book_rechecks_task(visit_id: int) -> None:
    visit = row_of(Visit, visit_id, "farm__business")
    now = timezone.now()
    gather_farm_rechecks(farm=visit.farm, today=local_day(now, visit.farm.business.zone), at=now)


@does(Job.ISSUE_REPORT)
def issue_report_task(visit_id: int) -> None:
    visit = row_of(Visit, visit_id, "farm__business")
    issue_finish_report(visit=visit, at=timezone.now())


@does(Job.SWEEP_RECHECKS, alone=DIARY)
def sweep_rechecks_task(business_id: int) -> None:
    """In the night of each business: re-checks gathered, routine visits wanted."""
    business, now = Business.objects.get(pk=business_id), timezone.now()
    today = local_day(now, business.zone)
    sweep_rechecks(scope=Scope(business.pk), today=today, at=now)
    sweep_routine(scope=Scope(business.pk), today=today, at=now)


@shared_task(name=Job.EXPIRE_OFFERS.value)
def expire_offers_task() -> None:
    expire_offers(at=timezone.now())


@shared_task(name=Job.LOOK_AT_WATCHES.value)
def look_at_watches_task() -> None:
    """Every minute, for all businesses; each watch that is due is looked at by an errand of its own."""
    find_due_watches(at=timezone.now())


OWNERS[Topic.WATCH] = Owner(
    renew=lambda outgoing, at: renew_call_link(outgoing=outgoing),
    never_went=lambda outgoing, at: follow_lost_call(outgoing=outgoing, at=at),
)


@does(Job.LOOK_AT_WATCH, seconds=60)
def look_at_watch_task(watch_id: int) -> None:
    look_at_watch(watch_id=watch_id, at=timezone.now())


@does(Job.LEARN_ROADS)
def learn_roads_task(visit_id: int) -> None:
    visit = row_of(Visit, visit_id, "business")
    learn_roads(business=visit.business, places=places_in_work(visit.scope), at=timezone.now())


@does(Job.SWEEP_ROADS)
def sweep_roads_task(business_id: int) -> None:
    sweep_roads(scope=Scope(business_id), at=timezone.now())


@does(Job.LEARN_LENGTHS)
def learn_lengths_task(business_id: int) -> None:
    """In the night of each business, before it is swept."""
    learn_visit_lengths(business=Business.objects.get(pk=business_id), at=timezone.now())
    tell_lengths_anew(scope=Scope(business_id))


@does(Job.PLAN_WEEK, seconds=THINKING_SECONDS)
def plan_week_task(week_plan_id: int) -> None:
    week_plan = row_of(WeekPlan, week_plan_id, "business")
    limits = SolveLimits(seconds=settings.PLAN_SECONDS)
    thought = think_week_plan(week_plan=week_plan, limits=limits, at=timezone.now())
    tell_proposal(week_plan=thought, at=timezone.now())


@does(Job.PROPOSE_WEEK)
def propose_week_task(business_id: int) -> None:
    """Of an evening; the plan itself is another errand, and stays a proposal."""
    propose_week(business=Business.objects.get(pk=business_id), at=timezone.now())


@does(Job.TELL_EVENING)
def tell_evening_task(business_id: int) -> None:
    tell_evening(business=Business.objects.get(pk=business_id), at=timezone.now())


@does(Job.REPLAN_WEEK, seconds=THINKING_SECONDS)
def replan_week_task(week_plan_id: int) -> None:
    week_plan = row_of(WeekPlan, week_plan_id, "business")
    think_replan(week_plan=week_plan, limits=SolveLimits(seconds=REPLAN_SECONDS), at=timezone.now())


@does(Job.GIVE_REASONS, seconds=THINKING_SECONDS)
def give_reasons_task(week_plan_id: int) -> None:
    week_plan = row_of(WeekPlan, week_plan_id)
    give_reasons(week_plan=week_plan)


@does(Job.PROVE_WEEK, seconds=THINKING_SECONDS)
def prove_week_task(week_plan_id: int) -> None:
    week_plan = row_of(WeekPlan, week_plan_id)
    prove_week_plan(week_plan=week_plan, seconds=PROVE_SECONDS)


@does(Job.TELL_FARMS)
def tell_farms_task(visit_id: int) -> None:
    visit = row_of(Visit, visit_id)
    tell_hour_news(visit=visit, at=timezone.now())


@does(Job.TELL_TOMORROW)
def tell_tomorrow_task(business_id: int) -> None:
    tell_tomorrow(business=Business.objects.get(pk=business_id), at=timezone.now())


@does(Job.TELL_NEXT)
def tell_next_task(visit_id: int) -> None:
    visit = row_of(Visit, visit_id, "van", "business")
    tell_next(visit=visit, at=timezone.now())


@shared_task(name=Job.LOOK_AT_DELAYS.value)
def look_at_delays_task() -> None:
    look_at_delays(at=timezone.now())


@does(Job.TELL_DELAYS)
def tell_delays_task(van_id: int) -> None:
    van = row_of(Van, van_id, "business")
    tell_delays(van=van, at=timezone.now())


@does(Job.SEND_INVITATIONS)
def send_invitations_task(visit_id: int) -> None:
    send_invitations(visit=row_of(Visit, visit_id), at=timezone.now())


@shared_task(name=Job.LOOK_AT_CALENDARS.value)
def look_at_calendars_task() -> None:
    look_at_calendars(at=timezone.now())


@does(Job.FETCH_DAYS_OFF, seconds=120)
def fetch_days_off_task(calendar_id: int) -> None:
    calendar = row_of(OutsideCalendar, calendar_id, "business")
    fetch_outside_calendar(calendar=calendar, at=timezone.now())
