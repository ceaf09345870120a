"""A tax rate that nothing goes by is taken off."""

from django.db import transaction

from invoicing.models import FarmTerms, Price, TaxRate
from invoicing.services.set_tax_rate import locked_unbilled
from trimops.kernel.errors import RuleBroken


class RateInUse(RuleBroken):
    """A price list or a farm goes by it."""

    code = "rate_in_use"


@transaction.atomic
def drop_tax_rate(*, rate: TaxRate) -> None:
    """RateBilledOn where it was billed on; RateInUse where it is the last of its code and something names it."""
    row = locked_unbilled(rate)
    scope = row.scope
    is_last = not TaxRate.objects.within(scope).filter(code=row.code).exclude(pk=row.pk).exists()
    named = (
        Price.objects.within(scope).filter(tax_code=row.code).exists()
        or FarmTerms.objects.within(scope).filter(tax_code=row.code).exists()
    )
    if is_last and named:
        raise RateInUse("A price list or a farm goes by it: give them another tax first.")
    row.delete()
