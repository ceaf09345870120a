"""What of a farm's money stays when the farm is erased, and what of it is not done yet."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from farms.models import Farm
from invoicing.domain.reminder_steps import ReminderState
from invoicing.models import Invoice, LateWork, Payment, Reminder
from invoicing.selectors.farm_invoices import ToPay, to_pay
from invoicing.selectors.payment_rows import with_rests
from invoicing.selectors.ready_to_bill import unbilled_visits
from invoicing.selectors.sending_rows import waiting
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class LooseEnds:
    """What goes with the farm or gets hard without it; none of it forbids that the farm is erased.

    `unbilled`: finished visits without a bill; `changed`: with other work than was billed; `to_pay` by currency;
    `unused`: (currency, amount) paid and set against nothing; `mails` that have not gone.
    """

    unbilled: int
    changed: int
    drafts: int
    to_pay: list[ToPay]
    unused: list[tuple[str, Decimal]]
    mails: int

    @property
    def is_any(self) -> bool:
        """Whether the owner should see to something first; mails go or do not."""
        return bool(self.unbilled or self.changed or self.drafts or self.to_pay or self.unused)


def books_of_farm(scope: Scope, farm: Farm) -> dict[str, int]:
    """How many of each are the business's books and stay; those there are none of are left out. Four queries."""
    issued = Invoice.objects.within(scope).filter(farm=farm).issued()
    reminders = Reminder.objects.within(scope).filter(invoice__farm=farm, state=ReminderState.APPROVED.value)
    found = {
        "invoices": issued.bills().count(),
        "credit notes": issued.credit_notes().count(),
        "payments": Payment.objects.within(scope).filter(farm=farm).count(),
        "reminders that went out": reminders.count(),
    }
    return {name: count for name, count in found.items() if count}


def loose_ends(scope: Scope, farm: Farm, today: date) -> LooseEnds:
    """Ten queries."""
    payments = Payment.objects.within(scope).standing().filter(farm=farm)
    unused: defaultdict[str, Decimal] = defaultdict(Decimal)
    for row in with_rests(scope, payments):
        unused[row.payment.currency] += row.rest
    return LooseEnds(
        unbilled_visits(scope).filter(farm=farm).count(),
        LateWork.objects.within(scope).filter(visit__farm=farm).count(),
        Invoice.objects.within(scope).filter(farm=farm).drafts().count(),
        to_pay(Scope(farm.business_id, farm.pk), today),
        [(currency, rest) for currency, rest in sorted(unused.items()) if rest],
        waiting(scope).filter(farm=farm).count(),
    )
