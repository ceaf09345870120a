"""Background jobs of the farm's side. Each loads its row and calls one service."""

from celery import shared_task
from django.utils import timezone

from trimops.jobs import Job
from trimops.portal.services.tell_report import tell_report
from trimops.tenancy.unscoped import unscoped
from visits.models import IssuedReport


@shared_task(name=Job.TELL_REPORT)
def tell_report_task(report_id: int) -> None:
    with unscoped("a job is handed one row"):
        report = IssuedReport.objects.get(pk=report_id)
    tell_report(report=report, at=timezone.now())
