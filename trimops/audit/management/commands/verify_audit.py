"""manage.py verify_audit: is the trail of who changed what still as it was written?"""

import sys
from argparse import ArgumentParser
from pathlib import Path

from django.core.management.base import BaseCommand, CommandError
from django.db import connection
from django.utils import timezone

from trimops.accounts.models import Business
from trimops.audit.heads_file import heads_file, kept_heads
from trimops.audit.models.audit_locks import missing_audit_locks
from trimops.audit.selectors.verify_chain import Verdict, verify_chain
from trimops.audit.services.seal_audit import seal_audit
from trimops.kernel.scope import Scope

SHOWN = 20


class Command(BaseCommand):
    help = "Work out every hash of the audit trail again. Ends with 1 where something was changed, cut or taken out."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--business", type=int, help="number of the one business to look at")
        parser.add_argument(
            "--heads",
            type=Path,
            help="ends of the chains kept elsewhere; else audit-heads.jsonl of the data folder",
        )

    def handle(self, *args: object, **options: object) -> None:
        file = options["heads"]
        file = file if isinstance(file, Path) else heads_file()
        if options["heads"] and not file.exists():
            raise CommandError(f"There is no file {file}.")
        try:
            kept = list(kept_heads(file))
        except ValueError as fault:
            raise CommandError(str(fault)) from fault
        # because: what was written in the last minutes is sealed before it is looked at
        seal_audit(now=timezone.now())
        told = options["business"]
        rows = Business.objects.filter(pk=told) if isinstance(told, int) else Business.objects.all()
        keys = rows.order_by("pk").values_list("pk", flat=True)
        verdicts = {pk: verify_chain(Scope(pk), kept) for pk in keys}
        if isinstance(told, int) and not verdicts:
            raise CommandError(f"There is no business {told}.")
        is_broken = [self._tell(pk, verdict) for pk, verdict in verdicts.items()]
        missing = self._missing_locks()
        if any(is_broken) or missing:
            sys.exit(1)

    def _tell(self, business: int, verdict: Verdict) -> bool:
        self.stdout.write(
            f"business {business}: {verdict.sealed} sealed, {verdict.blotted} of all blotted, "
            f"{verdict.waiting} not sealed yet, ends with {verdict.chain or 'nothing'}"
        )
        if last := verdict.last_cut:
            self.stdout.write(
                f"business {business}: {verdict.cut} entries from before {last.before:%Y-%m-%d} were cut, the last on "
                f"{last.cut_at:%Y-%m-%d}, when the trail was kept for {last.years} years"
            )
        for position, words in verdict.faults[:SHOWN]:
            self.stderr.write(
                f"business {business}, {f'position {position}' if position else 'not sealed'}: {words}"
            )
        if len(verdict.faults) > SHOWN:
            self.stderr.write(f"business {business}: and {len(verdict.faults) - SHOWN} faults more")
        return bool(verdict.faults)

    def _missing_locks(self) -> bool:
        missing = missing_audit_locks(connection)
        for name in missing:
            self.stderr.write(f"The database does not bear the lock {name}.")
        return bool(missing)
