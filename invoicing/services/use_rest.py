"""What is left of an earlier payment is set against invoices."""

from collections.abc import Mapping
from datetime import datetime
from decimal import Decimal

from django.db import transaction

from invoicing.models import Allocation, Payment
from invoicing.services.set_against import CannotSettle, set_against
from trimops.accounts.models import User
from trimops.kernel.clock import local_day


@transaction.atomic
def use_rest(*, payment: Payment, shares: Mapping[int, Decimal], at: datetime, by: User) -> list[Allocation]:
    """Set parts of the rest against invoices, dated today. CannotSettle when they do not fit or none is named."""
    if not shares:
        raise CannotSettle("Put an amount beside at least one invoice.")
    today = local_day(at, payment.business.zone)
    return set_against(payment=payment, shares=shares, on=today, at=at, by=by)
