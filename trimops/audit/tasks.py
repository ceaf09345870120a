"""The background job of the trail."""

from celery import shared_task
from django.utils import timezone

from trimops.audit.services.seal_audit import seal_audit
from trimops.jobs import Job


@shared_task(name=Job.SEAL_AUDIT.value)
def seal_audit_task() -> None:
    seal_audit(now=timezone.now())
