"""Background jobs of the money."""

from celery import shared_task
from django.utils import timezone

from invoicing.services.draft_invoice import draft_invoice
from trimops.jobs import Job
from trimops.tenancy.unscoped import unscoped
from visits.models import Visit


@shared_task(name=Job.DRAFT_INVOICE)
def draft_invoice_task(visit_id: int) -> None:
    with unscoped("a job is handed one row"):
        visit = Visit.objects.select_related("business").get(pk=visit_id)
    draft_invoice(visit=visit, at=timezone.now())
