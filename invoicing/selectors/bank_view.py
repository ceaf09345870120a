"""What came in from the bank: files, and bookings by what became of them."""

from dataclasses import dataclass

from django.db.models import Count, Q

from invoicing.models import BankEntry, BankFile, BankStatement
from invoicing.models.bank import BankEntryQuerySet
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class BankCounts:
    """Bookings: all, those not matched nor set aside yet by direction, and those set aside."""

    all: int
    came_in: int
    went_out: int
    set_aside: int


def bank_counts(scope: Scope) -> BankCounts:
    """Two queries, however many there are."""
    rows = BankEntry.objects.within(scope)
    whole = rows.aggregate(all=Count("pk"), aside=Count("pk", filter=Q(set_aside_at__isnull=False)))
    left = rows.to_match().aggregate(
        came=Count("pk", filter=Q(amount__gt=0)), went=Count("pk", filter=Q(amount__lt=0))
    )
    return BankCounts(whole["all"], left["came"], left["went"], whole["aside"])


def entries_to_match(scope: Scope) -> BankEntryQuerySet:
    """Money that came in and is not matched yet, the newest first."""
    return BankEntry.objects.within(scope).to_match().filter(amount__gt=0).select_related("statement")


def entries_gone_out(scope: Scope) -> BankEntryQuerySet:
    """Money that went out and is not looked at yet."""
    return BankEntry.objects.within(scope).to_match().filter(amount__lt=0).select_related("statement")


def entries_done(scope: Scope) -> BankEntryQuerySet:
    """Matched or set aside, the newest first."""
    left = BankEntry.objects.within(scope).to_match().values("pk")
    return BankEntry.objects.within(scope).exclude(pk__in=left).select_related("statement")


def statements_read(scope: Scope) -> list[BankStatement]:
    """The newest twenty, with how many bookings each brought."""
    rows = BankStatement.objects.within(scope).select_related("file").defer("file__content")
    return list(rows.annotate(brought=Count("entries"))[:20])


def files_waiting(scope: Scope) -> list[BankFile]:
    """Files whose columns are not told yet."""
    return list(BankFile.objects.within(scope).filter(read_at__isnull=True).defer("content"))
