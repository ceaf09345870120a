"""Something is agreed with a farm about its prices."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import transaction

from farms.models import Farm
from farms.services.refuse_erased import refuse_erased
from invoicing.domain.agreed_prices import AgreementKind
from invoicing.domain.pricing import PriceItem
from invoicing.models import Agreement
from invoicing.services.lock_period import refuse_locked
from trimops.kernel.errors import FieldRefused


class AgreementMakesNoSense(FieldRefused):
    """It could not be charged by; `field` says where to mend it."""

    code = "agreement_makes_no_sense"


@dataclass(frozen=True)
class AgreementWord:
    """Percent off, or a price without tax, for one item or (None) for everything; `why` is printed on the invoice."""

    kind: AgreementKind
    amount: Decimal
    item: PriceItem | None
    why: str
    valid_from: date
    valid_until: date | None = None


@transaction.atomic
def save_agreement(*, farm: Farm, word: AgreementWord) -> Agreement:
    """Keep it. Invoices already issued stay; drafts take it up when they are drafted again.

    AgreementMakesNoSense, PeriodLocked for a first day in a closed period, FarmIsErased.
    """
    refuse_erased(farm=farm)
    if word.kind is AgreementKind.PERCENT and not 0 < word.amount <= 100:
        raise AgreementMakesNoSense("amount", "A percentage off is more than 0, and 100 at most.")
    if word.kind is AgreementKind.PRICE and word.item is None:
        raise AgreementMakesNoSense("item", "A price of its own is for one thing: choose it.")
    if word.valid_until is not None and word.valid_until < word.valid_from:
        raise AgreementMakesNoSense("valid_until", "It would end before it begins.")
    refuse_locked(scope=farm.scope, day=word.valid_from, what="The agreement's first day")
    row = Agreement(
        business_id=farm.business_id,
        farm=farm,
        kind=word.kind.value,
        amount=word.amount,
        item=word.item.value if word.item else "",
        why=word.why.strip(),
        valid_from=word.valid_from,
        valid_until=word.valid_until,
    )
    row.full_clean()
    row.save()
    return row
