"""A farm is erased: how it is billed and what was agreed with it go with it."""

from django.db import transaction

from farms.models import Farm
from invoicing.models import Agreement, FarmTerms
from trimops.kernel.scope import Scope


@transaction.atomic
def forget_terms(*, farm: Farm) -> dict[str, int]:
    """How many of what went. Lines of issued invoices keep the words that were printed."""
    scope = Scope(farm.business_id)
    agreements = Agreement.objects.within(scope).filter(farm=farm)
    terms = FarmTerms.objects.within(scope).filter(farm=farm)
    gone = {"agreements on prices": agreements.count(), "terms of payment": terms.count()}
    agreements.delete()
    terms.delete()
    return {name: count for name, count in gone.items() if count}
