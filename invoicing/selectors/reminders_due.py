"""Reminders that wait to be decided on, grouped by who pays; and those decided on."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from invoicing.domain.minor_units import minor_digits
from invoicing.domain.reminder_steps import ReminderState, read_days, step_words
from invoicing.models import Reminder
from invoicing.selectors.interest_due import Claim, claim_for, claim_rules, paid_parts
from invoicing.selectors.money_rules import money_rules
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet


@dataclass(frozen=True)
class DueReminder:
    """A proposal with today's figures."""

    reminder: Reminder
    words: str
    days_late: int
    still_open: Decimal
    claim: Claim

    @property
    def total(self) -> Decimal:
        return self.still_open + self.claim.interest + self.claim.fixed_sum


@dataclass(frozen=True)
class RemindedPayer:
    """All that one payer is to be reminded of, in one currency."""

    name: str
    currency: str
    reminders: list[DueReminder]

    @property
    def still_open(self) -> Decimal:
        return sum((due.still_open for due in self.reminders), Decimal(0))

    @property
    def total(self) -> Decimal:
        return sum((due.total for due in self.reminders), Decimal(0))


def waiting_reminders(scope: Scope) -> TenantQuerySet[Reminder]:
    """Proposals of invoices that are still open: one that was paid meanwhile is not asked about."""
    rows: TenantQuerySet[Reminder] = Reminder.objects.within(scope).filter(state=ReminderState.PROPOSED.value)
    return rows.filter(invoice__is_open=True)


def reminders_due(scope: Scope, today: date) -> list[RemindedPayer]:
    """By payer, the longest overdue first. Four queries."""
    rules = money_rules(scope)
    rows = list(waiting_reminders(scope).defer("pdf").select_related("invoice__farm", "invoice__payer"))
    claims = claim_rules(scope, rules)
    parts = paid_parts(scope, [row.invoice_id for row in rows])
    days = read_days(rules.reminder_days)
    found = [
        DueReminder(
            row,
            step_words(row.step, days),
            (today - row.invoice.due_on).days if row.invoice.due_on else 0,
            round_money(row.invoice.open_amount, minor_digits(row.invoice.currency)),
            claim_for(row.invoice, today, claims, parts),
        )
        for row in rows
    ]
    return _by_payer(sorted(found, key=lambda due: -due.days_late))


def decided_reminders(scope: Scope) -> TenantQuerySet[Reminder]:
    """Those approved or dropped, the newest first."""
    rows: TenantQuerySet[Reminder] = Reminder.objects.within(scope).filter(decided_at__isnull=False)
    return rows.defer("pdf").select_related("invoice__farm", "decided_by").order_by("-decided_at", "-id")


def _by_payer(found: Iterable[DueReminder]) -> list[RemindedPayer]:
    groups: dict[tuple[str, str], list[DueReminder]] = {}
    for due in found:
        invoice = due.reminder.invoice
        name = invoice.buyer.get("name") or invoice.farm.name
        groups.setdefault((name, invoice.currency), []).append(due)
    return [RemindedPayer(name, currency, dues) for (name, currency), dues in groups.items()]
