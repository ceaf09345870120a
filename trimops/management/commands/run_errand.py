"""`manage.py run_errand NUMBER`: do one errand now, in this process."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand

from trimops.errands.services.run_errand import run_errand


class Command(BaseCommand):
    help = "Does one errand now, if it is due and nobody is at it, and ends when it is done."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("errand", type=int, help="its number")

    def handle(self, *args: object, errand: int, **options: object) -> None:
        run_errand(errand_id=errand)
