"""The visits of the last weeks are billed, by the same services as always; the newest are left to the office."""

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta

from invoicing.models import Invoice
from invoicing.selectors.money_rules import money_rules
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_and_send import issue_and_send
from invoicing.services.save_money_rules import save_money_rules
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from visits.domain.visit_states import VisitState
from visits.models import Visit

# Each invoice is drawn as a PDF, so the whole history would take minutes: what lies before was billed elsewhere.
LATELY, LONG_AGO = 40, 8
LEFT_AS_DRAFTS, LEFT_READY = 5, 2
LONG_AGO_DAYS = timedelta(days=50)
EVENING = timedelta(hours=2)


def bill_last_visits(crew: Crew, today: date) -> list[Invoice]:
    """The invoices issued, in the order of their days, so that numbers follow them; months that run stay drafts."""
    rows = Visit.objects.within(Scope(crew.business.pk)).in_state(VisitState.FINISHED)
    rows = rows.select_related("business", "farm__payer").order_by("-finished_at")
    lately = list(rows[:LATELY])
    noon = at_local(today, time(12), crew.business.zone)
    old = list(rows.filter(finished_at__lt=noon - LONG_AGO_DAYS)[:LONG_AGO])
    _bill_from(crew, lately)
    to_issue: dict[int, tuple[datetime, Invoice]] = {}
    for visit in reversed([*lately[LEFT_READY:], *old]):
        evening = (visit.finished_at or visit.changed_at) + EVENING
        draft = draft_invoice(visit=visit, at=evening)
        if draft is not None and visit not in lately[: LEFT_READY + LEFT_AS_DRAFTS]:
            to_issue[draft.pk] = (_issued_when(draft, evening, crew), draft)
    due = sorted((when, pk) for pk, (when, _) in to_issue.items() if when < noon)
    office = crew.people["office"]
    return [issue_and_send(invoice=to_issue[pk][1], at=when, by=office) for when, pk in due]


def _bill_from(crew: Crew, lately: Sequence[Visit]) -> None:
    finished = [visit.finished_at for visit in lately if visit.finished_at]
    rules = money_rules(Scope(crew.business.pk))
    rules.bills_from = local_day(min(finished), crew.business.zone) if finished else None
    save_money_rules(rules=rules)


def _issued_when(draft: Invoice, evening: datetime, crew: Crew) -> datetime:
    """The evening of the visit, or of the first day after the month."""
    if draft.visit_id is not None or draft.period_until is None:
        return evening
    first = (draft.period_until.replace(day=1) + timedelta(days=32)).replace(day=1)
    return at_local(first, time(18), crew.business.zone)
