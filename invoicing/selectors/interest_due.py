"""What may be claimed for an invoice that is paid late, by the rules of the business."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from invoicing.domain.late_interest import (
    InterestTerms,
    NoReferenceRate,
    PaidPart,
    RateFrom,
    RateRule,
    Stretch,
    fixed_sum,
    interest_stretches,
    interest_total,
)
from invoicing.domain.minor_units import minor_digits
from invoicing.models import Allocation, Invoice, MoneyRules, ReferenceRate
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope

ZERO = Decimal(0)


@dataclass(frozen=True)
class ClaimRules:
    """How a business claims for late payment; `terms` None: it does not. `source` is that of the newest rate.

    The fixed sums of `bands` are in `currency`, and are claimed on invoices in it alone.
    """

    terms: InterestTerms | None
    bands: tuple[tuple[Decimal, Decimal], ...] = ()
    source: str = ""
    currency: str = ""


@dataclass(frozen=True)
class Claim:
    """Interest up to a day, rounded once, and the fixed sum; `problem` says why no interest could be reckoned."""

    stretches: tuple[Stretch, ...] = ()
    interest: Decimal = ZERO
    fixed_sum: Decimal = ZERO
    problem: str = ""


def claim_rules(scope: Scope, rules: MoneyRules) -> ClaimRules:
    """By the money rules of the business and the rates it put down."""
    if not rules.charges_interest:
        return ClaimRules(None)
    rows = list(ReferenceRate.objects.within(scope).order_by("valid_from"))
    rates = tuple(RateFrom(row.valid_from, row.percent) for row in rows)
    terms = InterestTerms(
        rules.interest_margin, rules.interest_days_in_year, RateRule(rules.rate_rule), rates
    )
    source = rows[-1].source if rows else ""
    return ClaimRules(terms, read_bands(rules.fixed_sums), source, rules.business.currency)


def read_bands(kept: object) -> tuple[tuple[Decimal, Decimal], ...]:
    """Pairs (from this debt on, this sum) as they are kept with the money rules."""
    pairs = kept if isinstance(kept, list) else []
    return tuple(sorted((Decimal(str(debt)), Decimal(str(claimed))) for debt, claimed in pairs))


def paid_parts(scope: Scope, invoices: Iterable[int]) -> dict[int, list[PaidPart]]:
    """What lessened each invoice, and on which day it counts: that of the payment, else of the setting off.

    A credit note that corrects this very invoice counts from its issue on: what was billed wrongly was never owed.
    """
    found: dict[int, list[PaidPart]] = defaultdict(list)
    rows = Allocation.objects.within(scope).standing().filter(invoice__in=list(invoices))
    days = ("payment__received_on", "on", "invoice__issued_on")
    for invoice, corrects, came, noted, issued, amount in rows.values_list(
        "invoice_id", "credit_note__corrects_id", *days, "amount"
    ):
        found[invoice].append(PaidPart(issued if corrects == invoice else came or noted, amount))
    return found


def claim_of(invoice: Invoice, day: date, rules: ClaimRules) -> Claim:
    """`claim_for` one invoice alone."""
    return claim_for(invoice, day, rules, paid_parts(invoice.scope, [invoice.pk]))


def claim_for(
    invoice: Invoice, day: date, rules: ClaimRules, parts: Mapping[int, Sequence[PaidPart]]
) -> Claim:
    """The claim as of `day`; nothing where the business does not claim, or the invoice is not late."""
    if rules.terms is None or invoice.due_on is None or day <= invoice.due_on:
        return Claim()
    own = parts.get(invoice.pk, ())
    digits = minor_digits(invoice.currency)
    late = invoice.payable - sum((part.amount for part in own if part.on <= invoice.due_on), ZERO)
    bands = rules.bands if invoice.currency == rules.currency else ()
    once = round_money(fixed_sum(late, bands), digits)
    try:
        stretches = interest_stretches(invoice.payable, invoice.due_on, own, rules.terms, day)
    except NoReferenceRate as fault:
        return Claim(fixed_sum=once, problem=fault.message)
    return Claim(stretches, interest_total(stretches, digits), once)
