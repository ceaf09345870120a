"""`manage.py check_papers`: hash every issued paper anew, look for gaps in the numbers, see that the locks stand."""

from django.core.management.base import BaseCommand
from django.db import connection

from invoicing.models.issued_locks import missing_locks
from invoicing.selectors.papers_check import book_faults
from trimops.accounts.models import Business
from trimops.kernel.scope import Scope


class Command(BaseCommand):
    help = "Says which issued papers are not as they were issued; ends with 1 if there are any."

    def handle(self, *args: object, **options: object) -> None:
        found = [f"The database: the lock {name} is missing." for name in missing_locks(connection)]
        for business in Business.objects.order_by("id"):
            found += [f"{business}: {fault}." for fault in book_faults(Scope(business.pk))]
        for line in found:
            self.stdout.write(line)
        if found:
            raise SystemExit(1)
        self.stdout.write("Every issued paper is as it was issued, and no number is missing.")
