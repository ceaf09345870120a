"""`manage.py send_waiting`: try what waits to go, business by business, for the form without a timetable."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand
from django.utils import timezone

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from trimops.outbox.services.try_waiting import try_waiting


class Command(BaseCommand):
    help = "Tries the messages whose time has come."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument(
            "--all", action="store_true", help="also those that would wait a while longer after a try"
        )

    def handle(self, *args: object, all: bool, **options: object) -> None:
        for business in Business.objects.order_by("id"):
            tried = try_waiting(scope=Scope(business.pk), at=timezone.now(), all_now=all)
            self.stdout.write(f"{business}: {tried} tried")
