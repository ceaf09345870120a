"""A price list that was not billed on is taken off."""

from django.db import transaction

from invoicing.models import PriceList
from invoicing.selectors.billed_on import prices_are_billed_on
from invoicing.services.lock_period import refuse_locked
from invoicing.services.set_prices import PricesBilledOn


@transaction.atomic
def drop_prices(*, price_list: PriceList) -> None:
    """The list before it holds again on its days. PricesBilledOn or PeriodLocked where it must stay."""
    row = price_list.locked()
    refuse_locked(scope=row.scope, day=row.valid_from, what="The list's first day")
    if prices_are_billed_on(row):
        raise PricesBilledOn(f"Work is billed at “{row.name}”: it stays.")
    row.delete()
