"""Prices from a day on."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import transaction

from invoicing.domain.pricing import PriceItem
from invoicing.models import Price, PriceList, TaxRate
from trimops.accounts.models import Business
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope


class TaxReasonMissing(RuleBroken):
    """Where no tax is charged the invoice must say why."""

    code = "tax_reason_missing"


@dataclass(frozen=True)
class Tariff:
    """All prices without tax from `valid_from` on, and the tax they carry."""

    valid_from: date
    prices: Mapping[PriceItem, Decimal]
    tax_category: str
    tax_percent: Decimal
    tax_reason: str = ""


TAX_CODE = "usual"


@transaction.atomic
def set_prices(*, business: Business, tariff: Tariff) -> PriceList:
    """A price list that begins on that day; one that begins on the same day is replaced. Older days keep theirs."""
    if tariff.tax_percent == 0 and tariff.tax_category != "Z" and not tariff.tax_reason.strip():
        raise TaxReasonMissing("Say why no tax is charged: it must stand on the invoice.")
    scope = Scope(business.pk)
    row = PriceList.objects.within(scope).filter(valid_from=tariff.valid_from).first()
    row = row or PriceList(business=business, valid_from=tariff.valid_from)
    row.name = f"Prices from {tariff.valid_from:%-d %B %Y}"
    row.full_clean()
    row.save()
    Price.objects.within(scope).filter(price_list=row).delete()
    for item, amount in tariff.prices.items():
        price = Price(
            business=business, price_list=row, item=item.value, unit_price=amount, tax_code=TAX_CODE
        )
        price.full_clean()
        price.save()
    _set_rate(business, tariff)
    return row


def _set_rate(business: Business, tariff: Tariff) -> None:
    rows = TaxRate.objects.within(Scope(business.pk)).filter(code=TAX_CODE, valid_from=tariff.valid_from)
    rate = rows.first() or TaxRate(business=business, code=TAX_CODE, valid_from=tariff.valid_from)
    rate.category, rate.percent, rate.reason = tariff.tax_category, tariff.tax_percent, tariff.tax_reason
    rate.full_clean()
    rate.save()
