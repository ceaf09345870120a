"""A farm is erased: reminders that never went out go; one that was approved is a letter about a debt, and stays."""

from django.db import transaction

from farms.models import Farm
from invoicing.domain.reminder_steps import ReminderState
from invoicing.models import Reminder
from trimops.kernel.scope import Scope


@transaction.atomic
def forget_reminders(*, farm: Farm) -> dict[str, int]:
    """How many went, proposed or dropped.

    An approved one claims a sum on a day, with its paper: the business's books, as the invoice that it reminds of.
    """
    rows = Reminder.objects.within(Scope(farm.business_id)).filter(invoice__farm=farm)
    unsent = rows.exclude(state=ReminderState.APPROVED.value)
    count = unsent.count()
    unsent.delete()
    return {"reminders that did not go out": count} if count else {}
