"""`manage.py demo_signins`: the demo's sign-ins once more."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand
from rich.console import Console

from trimops.portal.demo.account import SERVED_AT, crush_line, sign_ins
from trimops.portal.demo.on_screen import sign_in_table


class Command(BaseCommand):
    help = "Prints the sign-ins of the demo business, if it is in this database."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--site", default=SERVED_AT, help="where the site is served")

    def handle(self, *args: object, site: str, **options: object) -> None:
        console = Console(file=self.stdout)  # type: ignore[arg-type]
        rows = sign_ins()
        if rows is None:
            console.print("No demo business here: `make demo` builds one.", highlight=False)
            return
        console.print(sign_in_table(rows))
        if line := crush_line(site):
            console.print(line, highlight=False, soft_wrap=True)
