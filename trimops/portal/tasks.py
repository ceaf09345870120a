"""Background jobs of the farm's side. Each loads its row and calls one service."""

from django.utils import timezone

from trimops.errands.does import does
from trimops.errands.row_of import row_of
from trimops.jobs import Job
from trimops.kernel.scope import Scope
from trimops.portal.services.clean_up import clean_up
from trimops.portal.services.tell_report import tell_report
from visits.models import IssuedReport


@does(Job.CLEAN_UP)
def clean_up_task(business_id: int) -> None:
    clean_up(scope=Scope(business_id), at=timezone.now())


@does(Job.TELL_REPORT)
def tell_report_task(report_id: int) -> None:
    report = row_of(IssuedReport, report_id)
    tell_report(report=report, at=timezone.now())
