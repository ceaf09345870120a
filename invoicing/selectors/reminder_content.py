"""What a reminder's paper and its mail say."""

from collections.abc import Sequence
from datetime import date, time
from decimal import Decimal

from invoicing.documents.reminder_content import InterestClaim, InterestSpan, ReminderContent
from invoicing.domain.late_interest import Stretch
from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice
from invoicing.selectors.interest_due import Claim, ClaimRules
from invoicing.selectors.invoice_content import invoice_content
from trimops.kernel.clock import at_local
from trimops.kernel.money import round_money
from trimops.paper.figures import money

FORMULA = (
    "Open amount × rate / 100 × days / {days}; the rate is the reference rate and {margin} points above it."
)


def reminder_content(
    invoice: Invoice, step: int, day: date, claim: Claim, rules: ClaimRules
) -> ReminderContent:
    """The paper of that step, with the parties as they stand on the invoice."""
    paper = invoice_content(invoice)
    open_amount = round_money(invoice.open_amount, paper.digits)
    return ReminderContent(
        step=step,
        day=day,
        made_at=at_local(day, time(12), invoice.business.zone),
        business=paper.seller,
        party=paper.buyer,
        farm_name=invoice.farm.name,
        number=invoice.number,
        issued_on=paper.issue_date,
        due_on=invoice.due_on or paper.issue_date,
        gross=paper.gross,
        settled=round_money(paper.gross - open_amount, paper.digits),
        open_amount=open_amount,
        total=open_amount + claim.interest + claim.fixed_sum,
        currency=paper.currency,
        digits=paper.digits,
        interest=_interest(claim, rules),
        fixed_sum=claim.fixed_sum,
        payment=paper.payment,
        ask=invoice.business.phone or invoice.business.email,
        logo=paper.logo,
        tax_name=paper.tax_name,
    )


def working_words(stretches: Sequence[Stretch], days_in_year: int) -> str:
    """How the interest was reckoned, a line for each stretch of days."""
    return "\n".join(
        f"{stretch.first:%-d %b %Y} to {stretch.last:%-d %b %Y}: {stretch.base:.2f} × "
        f"{stretch.percent.normalize():f} % × {stretch.days} / {days_in_year} days = {stretch.interest:.4f}"
        for stretch in stretches
    )


def reminder_subject(invoice: Invoice, total: Decimal) -> str:
    """The subject of the mail that carries it."""
    told = money(total, invoice.currency, minor_digits(invoice.currency))
    return f"Reminder of invoice {invoice.number} from {invoice.business.name}: {told}"


def reminder_text(invoice: Invoice) -> str:
    """The mail around it; what is claimed stands on the paper."""
    due = f" was due on {invoice.due_on:%-d %b %Y} and" if invoice.due_on else ""
    phone = invoice.seller.get("phone", "")
    return "\n".join(
        [
            f"{invoice.buyer.get('name') or invoice.farm.name},",
            "",
            f"our invoice {invoice.number}{due} is still open with us. A reminder is attached, and the invoice again.",
            "",
            "If you have paid in the last days, thank you: then there is nothing to do.",
            f"If something on it is not right, {f'ring {phone}, or ' if phone else ''}answer this mail.",
            "",
            invoice.seller.get("name") or invoice.business.name,
        ]
    )


def _interest(claim: Claim, rules: ClaimRules) -> InterestClaim | None:
    if not claim.stretches or rules.terms is None:
        return None
    spans = tuple(
        InterestSpan(part.first, part.last, part.days, part.base, part.percent, part.interest)
        for part in claim.stretches
    )
    margin = f"{rules.terms.margin.normalize():f}"
    formula = FORMULA.format(days=rules.terms.days_in_year, margin=margin)
    source = f"Reference rate: {rules.source}" if rules.source else ""
    return InterestClaim(spans, claim.interest, formula, source)
