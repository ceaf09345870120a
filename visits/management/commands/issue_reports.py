"""`manage.py issue_reports`: issue the reports of finished visits that have none, business by business."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand
from django.utils import timezone

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.services.issue_missing_reports import issue_missing_reports


class Command(BaseCommand):
    help = "Issues the reports of finished visits that have none yet; nobody is told by mail."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument(
            "--most", type=int, default=None, help="at most so many of each business, newest first"
        )

    def handle(self, *args: object, most: int | None, **options: object) -> None:
        for business in Business.objects.order_by("id"):
            issued = issue_missing_reports(scope=Scope(business.pk), at=timezone.now(), most=most)
            self.stdout.write(f"{business}: {len(issued)} reports issued")
