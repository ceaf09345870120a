"""The draft of one visit, made or made anew. The farm and the visit are locked by who calls."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from farms.models import Farm
from invoicing.domain.pricing import NoPrice
from invoicing.models import BilledWork, FarmTerms, Invoice
from invoicing.selectors.draft_work import PricedWork, claims_on, priced_work
from invoicing.selectors.farm_terms import farm_terms
from invoicing.selectors.money_rules import money_rules
from invoicing.services.store_draft import store_draft
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from visits.models import Visit


class PriceMissing(RuleBroken):
    """The price list lacks a price, or none holds on that day."""

    code = "price_missing"


@dataclass(frozen=True)
class AtHand:
    """What was read under the same locks: the farm's terms, and all that holds work of the visit."""

    terms: FarmTerms
    claims: Sequence[BilledWork]


def make_draft(
    *, farm: Farm, visit: Visit, draft: Invoice | None, at: datetime, at_hand: AtHand | None = None
) -> Invoice | None:
    """Draft what nothing else holds of the visit; None when that costs nothing. PriceMissing."""
    work = price(farm, [visit], draft, at_hand)
    day = local_day(visit.finished_at or at, farm.business.zone)
    invoice = draft or new_draft(farm, day, at, at_hand.terms if at_hand else None)
    if draft is None:
        if not work.costs_something:
            return None
        invoice.visit = visit
    invoice.payer_id = farm.payer_id
    invoice.tax_point = max(day, invoice.tax_point)  # because: the office may have moved it on
    return store_draft(invoice=invoice, work=work, at=at)


def price(
    farm: Farm,
    visits: Sequence[Visit],
    draft: Invoice | None,
    at_hand: AtHand | None = None,
) -> PricedWork:
    """The visits' work, priced, without what is held by other lines than those that drafting makes anew."""
    held = at_hand.claims if at_hand else claims_on(farm.scope, visits)
    claims = [row for row in held if not _is_made_anew(row, draft)]
    try:
        return priced_work(farm, visits, claims, at_hand.terms if at_hand else None)
    except NoPrice as fault:
        raise PriceMissing(str(fault)) from fault


def _is_made_anew(row: BilledWork, draft: Invoice | None) -> bool:
    return (
        draft is not None and row.invoice_id == draft.pk and row.line is not None and not row.line.is_by_hand
    )


def new_draft(farm: Farm, day: date, at: datetime, known: FarmTerms | None = None) -> Invoice:
    """An invoice not saved yet, with what the business and the farm have agreed."""
    rules, terms = money_rules(farm.scope), known or farm_terms(farm)
    return Invoice(
        business_id=farm.business_id,
        farm=farm,
        payer_id=farm.payer_id,
        currency=farm.business.currency,
        rounding_rule=rules.rounding_rule,
        tax_name=rules.tax_name,
        order_number=terms.order_number,
        buyer_reference=terms.buyer_reference,
        tax_point=day,
        drafted_at=at,
        prepaid=Decimal(0),
        rounding=Decimal(0),
    )
