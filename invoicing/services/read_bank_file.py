"""A kept file of the bank is read: its bookings come in once, whatever files they stand in."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from invoicing.domain.bank_csv import CsvMapping, read_bank_csv
from invoicing.domain.bank_entry_key import keys_of
from invoicing.domain.bank_file import BankLine, ReadStatement, UnreadableBankFile
from invoicing.domain.camt053 import looks_like_xml, read_camt053
from invoicing.models import BankEntry, BankFile, BankStatement
from invoicing.selectors.money_rules import money_rules
from invoicing.services.keep_bank_file import BankFileRefused
from trimops.accounts.models import User

BATCH = 500


@dataclass(frozen=True)
class Reading:
    """What came of a file: new bookings, those that had come already, and what a person should know."""

    new: int
    known: int
    warnings: tuple[str, ...]


@transaction.atomic
def read_bank_file(
    *, file: BankFile, at: datetime, by: User, mapping: CsvMapping | None = None, currency: str = ""
) -> Reading:
    """Read a CAMT.053, or with `mapping` a CSV in `currency` (empty: the business's), and keep what is new.

    BankFileRefused when it cannot be read (nothing of it is kept then) or was read meanwhile.
    """
    row = file.locked()
    if row.read_at is not None:
        raise BankFileRefused("This file was read already.")
    content = bytes(row.content)
    try:
        statements = _statements(content, mapping, currency or row.business.currency)
    except UnreadableBankFile as fault:
        raise BankFileRefused(str(fault)) from fault
    form = "camt053" if looks_like_xml(content) else "csv"
    kept = [
        _keep(row, form, statement, keys, at, by)
        for statement, keys in zip(statements, keys_of(statements), strict=True)
    ]
    row.read_at = at
    row.save(update_fields=["read_at"])
    known = sum(statement.known_before for statement in kept)
    total = sum(len(statement.lines) for statement in statements)
    warnings = tuple(dict.fromkeys(words for statement in kept for words in statement.warnings))
    return Reading(total - known, known, warnings)


def _statements(content: bytes, mapping: CsvMapping | None, currency: str) -> Sequence[ReadStatement]:
    if looks_like_xml(content):
        return read_camt053(content)
    if mapping is None:
        raise UnreadableBankFile("Say first which column of the file holds what.")
    return [read_bank_csv(content, mapping, currency)]


def _keep(
    file: BankFile, form: str, read: ReadStatement, keys: Sequence[str], at: datetime, by: User
) -> BankStatement:
    row = BankStatement(business_id=file.business_id, file=file, form=form, name=read.name[:60])
    row.account, row.currency, row.read_at, row.read_by = read.account[:40], read.currency[:3], at, by
    row.opening, row.closing = read.opening, read.closing
    row.first_day, row.last_day = read.first_day, read.last_day
    row.warnings = [*read.warnings, *_other_account(file, read)]
    row.full_clean()
    row.save()
    before = _count(row, keys)
    entries = [_entry(row, line, key) for line, key in zip(read.lines, keys, strict=True)]
    # because: the unique key decides, also against a file that somebody else reads at this moment
    BankEntry.objects.bulk_create(entries, batch_size=BATCH, ignore_conflicts=True)
    row.known_before = before
    row.save(update_fields=["known_before"])
    return row


def _count(statement: BankStatement, keys: Sequence[str]) -> int:
    rows = BankEntry.objects.within(statement.scope)
    return sum(rows.filter(key__in=keys[n : n + BATCH]).count() for n in range(0, len(keys), BATCH))


def _entry(statement: BankStatement, line: BankLine, key: str) -> BankEntry:
    return BankEntry(
        business_id=statement.business_id,
        statement=statement,
        key=key,
        booked_on=line.booked_on,
        amount=line.amount,
        currency=line.currency[:3],
        party_name=line.party_name,
        party_account=line.party_account,
        reference=line.reference,
        text=line.text[:2000],
        charges=line.charges,
        is_reversal=line.is_reversal,
    )


def _other_account(file: BankFile, read: ReadStatement) -> list[str]:
    own = money_rules(file.scope).iban
    if not own or not read.account or read.account == own:
        return []
    return [f"The statement is of {read.account}; your invoices name {own}."]
