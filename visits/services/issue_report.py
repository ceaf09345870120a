"""The report of a finished visit leaves the house: drawn once, kept with its hash, never changed."""

from dataclasses import replace
from datetime import datetime

from django.db import transaction

from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import User
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.services.tell_webhooks import tell_webhooks
from visits.documents.visit_report import visit_report
from visits.documents.visit_report_change import change_note, report_changes
from visits.documents.visit_report_content import VisitReport
from visits.domain.visit_states import VisitState
from visits.models import IssuedReport, Visit
from visits.selectors.issued_reports import newest_report, stored_report
from visits.selectors.report_content import report_content
from visits.services.keep_paper import keep_paper


class VisitNotFinished(RuleBroken):
    """What is not signed is no report."""

    code = "visit_not_finished"


class NothingNew(RuleBroken):
    """The newest version says already what is known of the visit."""

    code = "nothing_new"


@transaction.atomic
def issue_report(*, visit: Visit, at: datetime, by: User | None, tell: bool = True) -> IssuedReport:
    """The first version, or a later one that says what it changes. `tell`: whoever gets reports is told by mail.

    VisitNotFinished before the finish, NothingNew when the newest version says all of it already.
    """
    row = _locked(visit)
    before = newest_report(row.scope, row)
    report = report_content(row, at)
    if before is None:
        return _keep(row, report, at, by, tell=tell)
    changes = report_changes(stored_report(before), report)
    if not changes:
        raise NothingNew(f"Version {before.version} of the report says already what is known of this visit.")
    after = replace(report, version=before.version + 1, change_note=change_note(changes))
    return _keep(row, after, at, by, tell=tell)


@transaction.atomic
def issue_first_report(*, visit: Visit, at: datetime, tell: bool = True) -> IssuedReport:
    """The first version if there is none yet, else the newest as it stands: done twice, it is done once."""
    row = _locked(visit)
    return newest_report(row.scope, row) or _keep(row, report_content(row, at), at, None, tell=tell)


def _locked(visit: Visit) -> Visit:
    """The visit read anew and locked, so that no two versions bear one number."""
    row = visit.locked()
    if row.visit_state is not VisitState.FINISHED:
        raise VisitNotFinished(
            "The visit is not finished yet: its report is issued when somebody has signed."
        )
    refuse_erased(farm=row.farm)
    return row


def _keep(visit: Visit, report: VisitReport, at: datetime, by: User | None, *, tell: bool) -> IssuedReport:
    row = IssuedReport(business_id=visit.business_id, visit=visit)
    keep_paper(row=row, content=report, pdf=visit_report(report), at=at, by=by)
    if tell:
        enqueue(Job.TELL_REPORT, row.business_id, report_id=row.pk)
    tell_webhooks(
        business_id=row.business_id,
        event=WebhookEvent.REPORT_ISSUED,
        data=lambda: _told(row, visit),
        at=at,
        once=f"report {row.pk}",
    )
    return row


def _told(row: IssuedReport, visit: Visit) -> dict[str, object]:
    farm = {"id": visit.farm_id, "name": visit.farm.name}
    return {"report": row.pk, "version": row.version, "visit": visit.pk, "issued": row.made_at, "farm": farm}
