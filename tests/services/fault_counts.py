"""After the faults: what is there, and whether each thing is there once in effect."""

import json
from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import timedelta

from django.utils import timezone

from invoicing.models import Invoice
from invoicing.selectors.papers_check import book_faults
from tests.services.fault_houses import FaultHouse
from tests.services.fault_run import through_faults
from tests.services.smtp_server import Taken
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.jobs import DAILY
from trimops.outbox.domain.outgoing_states import OutgoingState, Topic
from trimops.outbox.models import Outgoing
from trimops.tenancy.unscoped import unscoped
from visits.domain.planning.audit import audit_week
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import IssuedReport, Recheck, Visit, WeekPlan, WeekPlanState
from visits.services.accept_week_plan import accept_week_plan

READERS_OF_A_REPORT = 2
"""Of the first farm: the herd manager gets the paper, the person of the farm a link. Of the second one: one."""


ENDED = (ErrandState.DONE.value, ErrandState.STUCK.value)
WAITS = (OutgoingState.WAITING.value, OutgoingState.GOING.value)


def what_waits() -> dict[str, int]:
    """How many of which errand and message wait; what is meant for a later hour does not count."""
    return through_faults(_what_waits)


def _what_waits() -> dict[str, int]:
    now = timezone.now()
    with unscoped("a trial counts all businesses"):
        errands = Errand.objects.exclude(state__in=ENDED).exclude(tries=0, due_at__gt=now)
        messages = Outgoing.objects.filter(state__in=WAITS).exclude(tries=0, not_before__gt=now)
        waiting = [*errands.values_list("job", "state"), *messages.values_list("topic", "state")]
    return {f"{what} {state}": count for (what, state), count in Counter(waiting).items()}


def is_somebody_at_it() -> bool:
    """Whether a worker has just begun an errand and is still at it."""
    since = timezone.now() - timedelta(seconds=2)
    with unscoped("a trial looks at all businesses"):
        rows = Errand.objects.filter(state=ErrandState.UNDER_WAY.value, began_at__gt=since)
        return through_faults(rows.exists)


def count_all(
    houses: Sequence[FaultHouse], taken: Iterable[Taken], counts: dict[str, int], wrong: list[str]
) -> None:
    """Fill in what was counted, and a sentence for each thing that is not as it must be."""
    with unscoped("a trial counts all businesses"):
        _errands(houses, counts, wrong)
        _reports(houses, counts, wrong)
        _invoices(houses, counts, wrong)
        _rechecks(houses, counts, wrong)
        _mails(houses, list(taken), counts, wrong)
    _plans(houses, counts, wrong)


def _errands(houses: Sequence[FaultHouse], counts: dict[str, int], wrong: list[str]) -> None:
    counts["errands done"] = Errand.objects.filter(state=ErrandState.DONE.value).count()
    counts["errands tried more than once"] = Errand.objects.filter(tries__gt=1).count()
    now = timezone.now()
    for errand in Errand.objects.exclude(state=ErrandState.DONE.value).exclude(tries=0, due_at__gt=now):
        wrong.append(f"{errand.state}: {errand.job} {errand.ids}, {errand.tries} tries: {errand.last_words}")
    for house in houses:
        begun = Errand.objects.filter(business=house.house.business, day__isnull=False)
        days = Counter(begun.values_list("job", flat=True))
        if missing := {job.value for job in DAILY} - days.keys():
            wrong.append(f"business {house.house.business.pk} never had {missing}")


def _reports(houses: Sequence[FaultHouse], counts: dict[str, int], wrong: list[str]) -> None:
    made = Counter(IssuedReport.objects.values_list("visit_id", flat=True))
    due = Counter(visit for house in houses for visit in house.visits)
    counts["reports due"], counts["reports issued"] = due.total(), made.total()
    if made != due:
        wrong.append(f"reports are not there once each: {dict((made - due) + (due - made))}")


def _invoices(houses: Sequence[FaultHouse], counts: dict[str, int], wrong: list[str]) -> None:
    billed = Counter(Invoice.objects.issued().values_list("visit_id", flat=True))
    due = Counter(visit for house in houses for visit in house.visits)
    counts["invoices due"], counts["invoices issued"] = due.total(), billed.total()
    if billed != due:
        wrong.append(f"visits are not billed once each: {dict((billed - due) + (due - billed))}")
    if Invoice.objects.drafts().exists():
        wrong.append(f"{Invoice.objects.drafts().count()} drafts are left")
    for house in houses:
        wrong.extend(str(fault) for fault in book_faults(house.house.scope))
        numbers = (
            Invoice.objects.filter(business=house.house.business).issued().values_list("number", flat=True)
        )
        last = sorted(int(number.rpartition("-")[2]) for number in numbers)
        if last != list(range(1, len(last) + 1)):
            wrong.append(f"business {house.house.business.pk}: numbers {last}")


def _rechecks(houses: Sequence[FaultHouse], counts: dict[str, int], wrong: list[str]) -> None:
    """Each block has one re-check, one wanted visit sees to it, and no farm is wanted twice for one reason."""
    rows = Recheck.objects.filter(visit__isnull=False)
    counts["re-checks due"], counts["re-checks with a visit"] = len(houses), rows.count()
    if rows.count() != len(houses) or Recheck.objects.count() != len(houses):
        wrong.append(f"{Recheck.objects.count()} re-checks, {rows.count()} with a visit, {len(houses)} due")
    open_states = [state.value for state in VisitState if state.is_open]
    wishes = Counter(
        Visit.objects.filter(state__in=open_states).values_list("farm_id", "reason").order_by("farm_id")
    )
    routine = sum(count for (_, reason), count in wishes.items() if reason == VisitReason.ROUTINE.value)
    counts["routine visits wanted"] = routine
    if doubled := {key: count for key, count in wishes.items() if count > 1}:
        wrong.append(f"wanted more than once: {doubled}")


def _mails(
    houses: Sequence[FaultHouse], taken: list[Taken], counts: dict[str, int], wrong: list[str]
) -> None:
    went = Outgoing.objects.filter(state=OutgoingState.WENT.value)
    by_topic = Counter(Outgoing.objects.values_list("topic", flat=True))
    due = {
        Topic.REPORT.value: (READERS_OF_A_REPORT + 1) * len(houses),
        Topic.INVOICE.value: 2 * len(houses),
    }
    for topic, number in due.items():
        counts[f"mails due: {topic}"], counts[f"mails written: {topic}"] = number, by_topic[topic]
        if by_topic[topic] != number:
            wrong.append(f"{by_topic[topic]} mails of {topic}, {number} are due")
    seen = Counter(str(each.mail["Message-ID"]).strip("<>").partition("@")[0] for each in taken)
    counts["mails written"], counts["mails at the server"] = sum(by_topic.values()), seen.total()
    counts["mails at the server, repeats dropped"] = len(seen)
    keys = {str(key) for key in went.values_list("key", flat=True)}
    if keys != set(seen):
        wrong.append(
            f"{len(keys - set(seen))} mails went and never came, {len(set(seen) - keys)} came unasked"
        )
    now = timezone.now()
    for row in Outgoing.objects.exclude(state=OutgoingState.WENT.value).exclude(tries=0, not_before__gt=now):
        wrong.append(f"{row.state}: {row} ({row.last_words})")


def _plans(houses: Sequence[FaultHouse], counts: dict[str, int], wrong: list[str]) -> None:
    """Every plan is clean by the auditor, which does not know the planner; accepted, no visit stands twice."""
    counts["plans proposed"] = counts["visits in plans"] = 0
    for house in houses:
        plans = WeekPlan.objects.within(house.house.scope).filter(state=WeekPlanState.PROPOSED)
        if not plans:
            wrong.append(f"business {house.house.business.pk} has no plan")
        weeks = Counter(plan.monday for plan in plans)
        if max(weeks.values(), default=0) > 1:
            wrong.append(f"business {house.house.business.pk}: two plans of one week")
        for plan in plans:
            counts["plans proposed"] += 1
            stops = [stop["job"] for shift in plan.plan["shifts"] for stop in shift["stops"]]
            counts["visits in plans"] += len(stops)
            breaches = audit_week(json.loads(json.dumps(plan.problem)), plan.plan)
            wrong.extend(f"plan {plan.pk}: {breach}" for breach in breaches)
            if len(stops) != len(set(stops)):
                wrong.append(f"plan {plan.pk}: a visit stands in it twice")
            accept_week_plan(week_plan=plan, at=timezone.now(), by=house.house.owner)
