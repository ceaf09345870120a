"""A period is closed, or opened again, with a reason; what is dated inside is then refused."""

from datetime import date, datetime

from django.db import OperationalError, connection, transaction

from invoicing.models import PeriodLock
from invoicing.selectors.period_lock import locked_until
from trimops.accounts.models import Business, User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope


class PeriodLocked(RuleBroken):
    """The day lies in a period that is closed."""

    code = "period_locked"


class CannotLock(RuleBroken):
    """The period cannot be closed or opened like that."""

    code = "cannot_lock"


@transaction.atomic
def lock_period(*, scope: Scope, until: date | None, why: str, at: datetime, by: User) -> PeriodLock:
    """Close everything up to the day `until`, or open it again (an earlier day, or None for all). A row for each.

    CannotLock for a day that is not over, for what holds already, without a reason, or while somebody is issuing or
    booking at this very moment: what was begun before the lock must not land inside it.
    """
    business = _alone(scope)
    if not why.strip():
        raise CannotLock("Say why: it is kept with the lock.")
    if until is not None and until >= local_day(at, business.zone):
        raise CannotLock("Only days that are over can be locked: choose yesterday or earlier.")
    if until == locked_until(scope):
        raise CannotLock("That is what holds already: choose another day.")
    row = PeriodLock(business=business, locked_until=until, why=why.strip(), at=at, by=by)
    row.full_clean()
    row.save()
    return row


def refuse_locked(*, scope: Scope, day: date, what: str = "") -> None:
    """PeriodLocked when `day` lies in a closed period; `what` begins the sentence ("The tax point").

    Call it inside the transaction that writes. No lock can then be put on before that transaction ends.
    """
    _hold_off_locks(scope)
    until = locked_until(scope)
    if until is not None and day <= until:
        raise PeriodLocked(
            f"{what or 'That day'} is {day:%-d %B %Y}, and the books are locked up to {until:%-d %B %Y}. "
            "Choose a later day, or have the owner open the period."
        )


def _alone(scope: Scope) -> Business:
    """The business, at a moment when nobody is between `refuse_locked` and the end of a transaction."""
    rows = Business.objects.select_for_update(no_key=True, nowait=True)
    try:
        with transaction.atomic():
            return rows.get(pk=scope.business_id)
    except OperationalError as busy:
        raise CannotLock("Somebody is issuing or booking just now: try again in a moment.") from busy


def _hold_off_locks(scope: Scope) -> None:
    """Share the business's row: all who write share it, `lock_period` wants it alone.

    Django has no word for FOR SHARE. SQLite lets in one writer at a time and needs none.
    """
    if connection.vendor == "postgresql":
        table = connection.ops.quote_name(Business._meta.db_table)
        with connection.cursor() as cursor:
            cursor.execute(f"SELECT 1 FROM {table} WHERE id = %s FOR SHARE", [scope.business_id])
