"""`manage.py send_waiting`: try the mails that wait, business by business, for the form without a timetable."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand
from django.utils import timezone

from invoicing.services.sweep_sendings import sweep_sendings
from trimops.accounts.models import Business
from trimops.kernel.scope import Scope


class Command(BaseCommand):
    help = "Tries the mails whose time has come; those that nobody can tell about are said to be unclear."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--all", action="store_true", help="also those that would wait a while longer")

    def handle(self, *args: object, all: bool, **options: object) -> None:
        for business in Business.objects.order_by("id"):
            swept = sweep_sendings(scope=Scope(business.pk), at=timezone.now(), all_now=all)
            self.stdout.write(f"{business}: {swept.started} tried, {swept.unclear} unclear")
