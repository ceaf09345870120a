"""How one farm is billed is put down."""

from datetime import datetime

from django.db import transaction

from farms.models import Farm, Payer
from farms.services.refuse_erased import refuse_erased
from farms.services.save_farm import save_farm
from farms.services.save_payer import save_payer
from invoicing.models import FarmTerms, TaxRate
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken


class TaxCodeUnknown(RuleBroken):
    """There is no rate of that code."""

    code = "tax_code_unknown"


@transaction.atomic
def save_farm_terms(*, terms: FarmTerms, country: str, at: datetime, by: User) -> FarmTerms:
    """Keep them, with the country of who pays: the farm's payer, else the farm ("": as that of the business).

    Invoices already issued stay; drafts take it up when they are drafted again. FarmIsErased, TaxCodeUnknown.
    """
    refuse_erased(farm=terms.farm)
    codes = TaxRate.objects.within(terms.scope).filter(code=terms.tax_code)
    if terms.tax_code and not codes.exists():
        raise TaxCodeUnknown(f"There is no tax rate “{terms.tax_code}”: add it first.")
    terms.full_clean()
    terms.save()
    _set_country(terms.farm, country, at, by)
    return terms


def _set_country(farm: Farm, country: str, at: datetime, by: User) -> None:
    if farm.payer_id is not None:
        payer = Payer.objects.within(farm.scope).get(pk=farm.payer_id)
        if payer.country != country:
            payer.country = country
            save_payer(payer=payer)
        return
    row = farm.locked()
    if row.country != country:
        row.country = country
        save_farm(farm=row, at=at, by=by)
