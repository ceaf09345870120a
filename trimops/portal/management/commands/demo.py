"""`manage.py demo`: build the invented business, plan its week, make one visit, write eight files."""

import time
from argparse import ArgumentParser
from datetime import date
from pathlib import Path

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError
from django.utils import timezone
from rich.console import Console

from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.portal.demo.account import SERVED_AT, account_of, crush_line, sign_ins
from trimops.portal.demo.build_demo import DemoWishes
from trimops.portal.demo.invent_history import ZONE
from trimops.portal.demo.on_screen import progress_bar, sign_in_table
from trimops.portal.demo.run_demo import DemoOutcome, run_demo


class Command(BaseCommand):
    help = "Builds the invented demo business anew, plans its coming week and writes eight files."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument(
            "--today", type=date.fromisoformat, help="the day the demo stands at (YYYY-MM-DD)"
        )
        parser.add_argument("--farms", type=int, default=40, choices=range(1, 41), metavar="1..40")
        parser.add_argument("--months", type=int, default=18, choices=range(1, 37), metavar="1..36")
        parser.add_argument("--seconds", type=float, default=10, help="how long to think about the week")
        parser.add_argument("--seed", type=int, default=1, help="the same seed and day give the same history")
        parser.add_argument("--output", type=Path, default=settings.BASE_DIR / "demo-output")

    def handle(
        self,
        *args: object,
        today: date | None,
        farms: int,
        months: int,
        seconds: float,
        seed: int,
        output: Path,
        **options: object,
    ) -> None:
        console = Console(file=self.stdout)  # type: ignore[arg-type]
        begun = time.monotonic()
        wishes = DemoWishes(today or local_day(timezone.now(), ZONE), farms, months, seconds, seed)
        outcome = self._run(wishes, output, console)
        for line in account_of(outcome):
            console.print(line, highlight=False, soft_wrap=True)
        console.print()
        console.print(sign_in_table(sign_ins() or []))
        console.print(crush_line(SERVED_AT), highlight=False, soft_wrap=True)
        console.print(f"Took {time.monotonic() - begun:.0f} s. `make serve` opens it.", highlight=False)

    def _run(self, wishes: DemoWishes, output: Path, console: Console) -> DemoOutcome:
        with progress_bar(console) as bar:
            task = bar.add_task("Beginning", total=1)

            def tell(words: str, share: float) -> None:
                bar.update(task, description=words, completed=share)

            try:
                return run_demo(wishes, output, tell)
            except RuleBroken as refused:
                raise CommandError(refused.message) from refused
