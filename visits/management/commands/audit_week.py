"""`manage.py audit_week PROBLEM.json PLAN.json`: check a planned week against its problem."""

from argparse import ArgumentParser
from pathlib import Path

from django.core.management.base import BaseCommand, CommandError

from visits.domain.planning.audit import Unreadable, audit_week, read_document
from visits.management.one_line import one_line

UNREADABLE = 2


class Command(BaseCommand):
    help = "Recomputes every figure and rule of a planned week; prints one line per breach, none for a clean plan."
    requires_system_checks: list[str] = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("problem", type=Path, metavar="PROBLEM.json", help="the week to plan")
        parser.add_argument("plan", type=Path, metavar="PLAN.json", help="the planned week")

    def handle(self, *args: object, problem: Path, plan: Path, **options: object) -> None:
        week, told = _read(problem), _read(plan)
        try:
            breaches = audit_week(week, told)
        except Unreadable as wrong:
            raise CommandError(_lines(problem, wrong), returncode=UNREADABLE) from wrong
        if breaches:
            self.stdout.write("\n".join(map(one_line, breaches)))
            raise SystemExit(1)
        self.stderr.write("No breach.")


def _read(path: Path) -> dict[str, object]:
    try:
        return read_document(path.read_text(encoding="utf-8-sig"))
    except Unreadable as wrong:
        raise CommandError(_lines(path, wrong), returncode=UNREADABLE) from wrong
    except (OSError, UnicodeDecodeError) as wrong:
        raise CommandError(f"{path}: {wrong}", returncode=UNREADABLE) from wrong


def _lines(path: Path, wrong: Unreadable) -> str:
    return "\n".join(one_line(f"{path}: {fault}") for fault in wrong.faults)
