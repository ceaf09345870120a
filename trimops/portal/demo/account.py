"""What the demo says it did, in a few readable lines."""

from collections.abc import Iterator, Sequence

from django.urls import reverse

from trimops.accounts.models import Membership
from trimops.portal.demo.demo_people import cast
from trimops.portal.demo.papers import ORDER
from trimops.portal.demo.ready_visit import visit_to_begin
from trimops.portal.demo.run_demo import DemoOutcome, stops_of
from trimops.portal.demo.wipe_demo import demo_business
from trimops.web.templatetags.figures import money

SERVED_AT = "http://127.0.0.1:8000"
"""Where `make serve` serves unless told otherwise."""


def account_of(outcome: DemoOutcome) -> Iterator[str]:
    """Line by line; every number is counted, none is written down beforehand."""
    built, wishes, week, made = outcome.built, outcome.wishes, outcome.week, outcome.made
    done = [visit for visit in built.past.visits if visit.is_done]
    cows_seen = sum(len(visit.cows) for visit in done)
    yield f"{built.crew.business}: everything in it is invented."
    yield f"{built.farms} farms with {built.cows:,} cows, {len(built.crew.vans)} vans."
    yield (
        f"{wishes.first_day:%-d %B %Y} to {wishes.today:%-d %B %Y}: {len(done):,} visits, {cows_seen:,} cows "
        f"at the crush, {len(built.past.blocks):,} blocks, {len(built.past.rechecks):,} re-checks."
    )
    yield (
        f"The last visits are billed: {outcome.billed} invoices, the newest left as drafts; "
        "bank-statement.xml pays some of what is open: read it under Invoices, The bank."
    )
    yield (
        f"Week of {wishes.monday:%-d %B}: {_count(week.problem, 'jobs')} visits to plan, "
        f"{len(stops_of(week.plan))} planned, {_count(week.plan, 'left_out')} left for later; "
        f"the audit found {len(week.breaches) or 'no'} breach{'es' if len(week.breaches) > 1 else ''}."
    )
    start = made.visit.started_at or wishes.dawn
    yield (
        f"One visit made: {made.visit.farm}, {start:%A %-d %B}, {made.cows} cows; "
        f"{made.recheck_visits} re-check visit{'' if made.recheck_visits == 1 else 's'} wanted from it; "
        f"invoice {made.invoice.number} over {money(made.invoice.gross, made.invoice.currency)}."
    )
    yield from ("", "Written:", *(f"  {outcome.folder / name}" for name in ORDER))


def sign_ins() -> Sequence[tuple[str, str, str]] | None:
    """(part, e-mail, password) for each sign-in of the demo; None where there is no demo business."""
    business = demo_business()
    if business is None:
        return None
    people = Membership.objects.filter(business=business).select_related("user").order_by("id")
    return [(place.get_role_display(), place.user.email, cast().password) for place in people]


def crush_line(site: str) -> str:
    """Where the visit that was left ready is begun, and as whom; empty where there is none any more."""
    business = demo_business()
    visit = visit_to_begin(business) if business else None
    if visit is None:
        return ""
    start = visit.planned_start
    hour = f", {start.astimezone(visit.business.zone):%A %-d %B, %H:%M}" if start else ""
    who = f" as {visit.van.trimmer.email}" if visit.van else ""
    address = f"{site}{reverse('crush', args=[visit.pk])}"
    return f"Ready at the crush: {visit.farm}{hour}. Sign in{who} and open {address}"


def _count(document: dict[str, object], name: str) -> int:
    found = document[name]
    return len(found) if isinstance(found, list) else 0
