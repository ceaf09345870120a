"""Who owes how much, and since when."""

from collections import defaultdict
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from typing import TypeVar

from django.db.models import (
    Case,
    DateField,
    DecimalField,
    ExpressionWrapper,
    F,
    Model,
    Q,
    QuerySet,
    Sum,
    When,
)
from django.db.models.expressions import Combinable
from django.db.models.functions import Coalesce

from farms.models import Farm
from invoicing.domain.ageing import Age, due_days
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import SettledBy
from invoicing.models import Allocation, Invoice, InvoiceKind, Payment
from invoicing.models.invoice import OPEN_AMOUNT
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope

M = TypeVar("M", bound=Model)
ZERO = Decimal(0)


@dataclass
class Debtor:
    """One farm with its payer. `unused`: money received or credit not set against anything yet."""

    farm_id: int
    farm_name: str
    payer_name: str
    currency: str
    ages: dict[Age, Decimal] = field(default_factory=dict)
    unused: Decimal = ZERO

    @property
    def total(self) -> Decimal:
        return sum(self.ages.values(), ZERO)

    @property
    def overdue(self) -> Decimal:
        return self.total - self.ages.get(Age.NOT_YET_DUE, ZERO)

    @property
    def amounts(self) -> list[Decimal]:
        """By age, in the order of the bands."""
        return [self.ages.get(age, ZERO) for age in Age]


@dataclass(frozen=True)
class AgedDebtors:
    """Everybody who owes in one currency, the largest overdue sum first, and the sums."""

    currency: str
    debtors: tuple[Debtor, ...]

    @property
    def sums(self) -> list[Decimal]:
        return [sum((debtor.ages.get(age, ZERO) for debtor in self.debtors), ZERO) for age in Age]

    @property
    def total(self) -> Decimal:
        return sum((debtor.total for debtor in self.debtors), ZERO)

    @property
    def overdue(self) -> Decimal:
        return sum((debtor.overdue for debtor in self.debtors), ZERO)

    @property
    def unused(self) -> Decimal:
        return sum((debtor.unused for debtor in self.debtors), ZERO)


def aged_debtors(scope: Scope, today: date, farm: Farm | None = None) -> list[AgedDebtors]:
    """One list for each currency in which something is open or unused. At most three queries.

    With `farm` for that one alone.
    """
    debtors = _owing(scope, today, farm)
    unused = {key: amount for key, amount in _unused(scope, farm).items() if amount}
    for debtor in debtors:
        # because: a farm whose payer changed has a row for each payer, and its free money is shown once
        amount = unused.pop((debtor.farm_id, debtor.currency), ZERO)
        debtor.unused = round_money(amount, minor_digits(debtor.currency))
    debtors += _to_the_good(scope, unused)
    debtors.sort(key=lambda debtor: (-debtor.overdue, -debtor.total, debtor.farm_name))
    currencies = sorted({debtor.currency for debtor in debtors})
    return [
        AgedDebtors(currency, tuple(debtor for debtor in debtors if debtor.currency == currency))
        for currency in currencies
    ]


def _owing(scope: Scope, today: date, farm: Farm | None) -> list[Debtor]:
    rows = Invoice.objects.within(scope).issued().bills().filter(_of(farm), is_open=True)
    rows = rows.annotate(late_from=Coalesce("due_on", "issued_on", output_field=DateField()))
    left = ExpressionWrapper(OPEN_AMOUNT, output_field=DecimalField())
    sums = [Coalesce(Sum(left, filter=_due(age, today)), ZERO) for age in Age]
    named = {age.value: amount for age, amount in zip(Age, sums, strict=True)}
    who = ("farm_id", "farm__name", "payer__name", "payer_id", "currency")
    found = []
    for row in rows.order_by().values(*who).annotate(**named):
        debtor = Debtor(row["farm_id"], row["farm__name"], row["payer__name"] or "", row["currency"])
        digits = minor_digits(debtor.currency)
        debtor.ages = {age: round_money(row[age.value], digits) for age in Age}
        found.append(debtor)
    return found


def _to_the_good(scope: Scope, unused: dict[tuple[int, str], Decimal]) -> list[Debtor]:
    """Farms that owe nothing and have money on their account."""
    farms = Farm.objects.within(scope).select_related("payer").in_bulk({farm for farm, _ in unused})
    return [
        Debtor(
            farm_id,
            farms[farm_id].name,
            str(farms[farm_id].payer or ""),
            currency,
            unused=round_money(amount, minor_digits(currency)),
        )
        for (farm_id, currency), amount in unused.items()
    ]


def _due(age: Age, today: date) -> Q:
    first, last = due_days(age, today)
    asked = Q() if first is None else Q(late_from__gte=first)
    return asked if last is None else asked & Q(late_from__lte=last)


def _of(farm: Farm | None, path: str = "farm") -> Q:
    return Q() if farm is None else Q(**{path: farm})


def _unused(scope: Scope, farm: Farm | None) -> dict[tuple[int, str], Decimal]:
    """By farm and currency: credit notes not set off, and payments less what they were set against or paid back."""
    notes = Invoice.objects.within(scope).issued().credit_notes().filter(_of(farm), is_open=True)
    payments = Payment.objects.within(scope).standing().filter(_of(farm))
    parts = Allocation.objects.within(scope).standing().filter(kind=SettledBy.PAYMENT)
    parts = parts.filter(_of(farm, "payment__farm"))
    used = Case(When(invoice__kind=InvoiceKind.INVOICE, then=-F("amount")), default=F("amount"))
    sums = _by_farm(notes, OPEN_AMOUNT).union(
        _by_farm(payments, F("amount")), _by_farm(parts, used, "payment__"), all=True
    )
    found: dict[tuple[int, str], Decimal] = defaultdict(Decimal)
    for farm_id, currency, amount in sums:
        found[farm_id, currency] += amount
    return found


def _by_farm(
    rows: "QuerySet[M]", amount: Combinable, path: str = ""
) -> "QuerySet[M, tuple[int, str, Decimal]]":
    """The sum for each farm and currency."""
    named = rows.order_by().annotate(of=F(f"{path}farm_id"), money=F(f"{path}currency"))
    sums = named.values("of", "money").annotate(sum=Sum(amount))
    found: QuerySet[M, tuple[int, str, Decimal]] = sums.values_list("of", "money", "sum")
    return found
