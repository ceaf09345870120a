"""Proposals for bank bookings, from what is open and who paid from where before."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db.models import Q

from invoicing.domain.bank_account import without_blanks
from invoicing.domain.match_facts import Booking, OpenBill, OpenBook, Proposal
from invoicing.domain.matching import SURE, best_proposals
from invoicing.domain.minor_units import minor_digits
from invoicing.models import BankEntry, Invoice, Payment
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope

Alike = tuple[date, Decimal, str]


@dataclass(frozen=True)
class ProposedShare:
    """One invoice that a proposal settles by so much; `left` stays open of it."""

    key: int
    number: str
    farm_name: str
    amount: Decimal
    left: Decimal


@dataclass(frozen=True)
class MatchRow:
    """A booking with what it may pay, the most likely first."""

    entry: BankEntry
    proposals: tuple[Proposal, ...]
    shares: tuple[ProposedShare, ...]
    """Of the first proposal."""

    @property
    def best(self) -> Proposal | None:
        return self.proposals[0] if self.proposals else None

    @property
    def is_sure(self) -> bool:
        return self.best is not None and self.best.confidence >= SURE

    @property
    def rest(self) -> Decimal:
        """What would stay on the farm's account."""
        return self.entry.amount - sum((share.amount for share in self.shares), Decimal(0))


def match_rows(scope: Scope, entries: Sequence[BankEntry]) -> list[MatchRow]:
    """Every booking with its proposals; the number of queries does not depend on how many there are."""
    twins = _twins(scope, entries)
    found: dict[int, MatchRow] = {}
    for currency in {entry.currency for entry in entries}:
        of_currency = [entry for entry in entries if entry.currency == currency]
        rows = list(_open_rows(scope, currency))
        book = _book(scope, rows, of_currency, currency)
        farm_names = {row.pk: row.farm.name for row in rows}
        for entry in of_currency:
            found[entry.pk] = _match_row(entry, book, farm_names, entry.pk in twins)
    return [found[entry.pk] for entry in entries]


def _match_row(entry: BankEntry, book: OpenBook, farm_names: dict[int, str], has_twin: bool) -> MatchRow:
    proposals = tuple(best_proposals(_booking(entry, has_twin), book))
    shares = [_share(book.by_key[key], farm_names[key], amount) for key, amount in _first(proposals)]
    return MatchRow(entry, proposals, tuple(shares))


def _first(proposals: Sequence[Proposal]) -> Iterable[tuple[int, Decimal]]:
    return proposals[0].shares if proposals else ()


def _share(bill: OpenBill, farm_name: str, amount: Decimal) -> ProposedShare:
    return ProposedShare(bill.key, bill.number, farm_name, amount, bill.open_amount - amount)


def _booking(entry: BankEntry, has_twin: bool) -> Booking:
    digits = minor_digits(entry.currency)
    return Booking(
        entry.pk,
        entry.booked_on,
        round_money(entry.amount, digits),
        entry.currency,
        entry.reference,
        entry.text,
        entry.party_name,
        entry.party_account,
        round_money(entry.charges, digits),
        has_twin,
    )


def _open_rows(scope: Scope, currency: str) -> Iterable[Invoice]:
    rows = Invoice.objects.within(scope).issued().bills().filter(is_open=True, currency=currency)
    rows = rows.select_related("farm", "payer")
    return rows.only(
        *("number", "creditor_reference", "payable", "settled", "issued_on", "due_on", "tax_point"),
        *("farm__name", "farm__business", "payer__name", "payer__business"),
    )


def _group(farm_id: int, payer_id: int | None) -> str:
    return f"payer:{payer_id}" if payer_id else f"farm:{farm_id}"


def _book(scope: Scope, rows: Sequence[Invoice], entries: Sequence[BankEntry], currency: str) -> OpenBook:
    digits = minor_digits(currency)
    bills = tuple(_bill(row, digits) for row in rows)
    names: dict[str, set[str]] = defaultdict(set)
    for row in rows:
        group = _group(row.farm_id, row.payer_id)
        names[group] |= {row.farm.name, *([row.payer.name] if row.payer else [])}
    accounts: dict[str, set[str]] = defaultdict(set)
    for account, name, group in _paid_before(scope, entries):
        if account:
            accounts[without_blanks(account)].add(group)
        if name:
            names[group].add(name)
    return OpenBook(
        bills,
        {group: tuple(sorted(told)) for group, told in names.items()},
        {account: frozenset(groups) for account, groups in accounts.items()},
    )


def _bill(row: Invoice, digits: int) -> OpenBill:
    return OpenBill(
        row.pk,
        row.number,
        row.creditor_reference,
        _group(row.farm_id, row.payer_id),
        row.farm_id,
        round_money(row.open_amount, digits),
        row.issued_on or row.tax_point,
        row.due_on,
    )


def _paid_before(scope: Scope, entries: Sequence[BankEntry]) -> Iterable[tuple[str, str, str]]:
    """Account, name and group of earlier payments by the accounts and names of these bookings."""
    accounts = {entry.party_account for entry in entries if entry.party_account}
    names = {entry.party_name for entry in entries if entry.party_name}
    who = Q(bank_entry__party_account__in=accounts) | Q(payer_name__in=names)
    rows = Payment.objects.within(scope).standing().filter(who, amount__gt=0).order_by()
    fields = ("bank_entry__party_account", "payer_name", "farm_id", "farm__payer_id")
    for account, name, farm_id, payer_id in rows.values_list(*fields).distinct():
        yield account or "", name, _group(farm_id, payer_id)


def _twins(scope: Scope, entries: Sequence[BankEntry]) -> set[int]:
    """Bookings of which one alike, of the same day and amount, came in a file of another form."""
    days = {entry.booked_on for entry in entries}
    rows = BankEntry.objects.within(scope).filter(booked_on__in=days)
    forms: dict[Alike, set[str]] = defaultdict(set)
    mine: dict[int, Alike] = {}
    for row in rows.values_list("pk", "booked_on", "amount", "currency", "statement__form"):
        pk, booked_on, amount, currency, form = row
        forms[booked_on, amount, currency].add(form)
        mine[pk] = (booked_on, amount, currency)
    return {entry.pk for entry in entries if len(forms[mine[entry.pk]]) > 1}
