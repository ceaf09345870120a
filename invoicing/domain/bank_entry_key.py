"""A name for each booking, so that statements which overlap bring it once."""

import hashlib
from collections import Counter
from collections.abc import Iterable, Sequence
from decimal import Decimal

from invoicing.domain.bank_file import BankLine, ReadStatement

# Written by banks where they have no reference of their own.
NO_REFERENCE = {"", "NONREF", "NOREF", "NOTPROVIDED", "N/A", "0"}


def keys_of(statements: Sequence[ReadStatement]) -> list[tuple[str, ...]]:
    """The keys of the bookings of each statement of one file, in their order.

    A key is told from account, day, amount, currency and the bank's own reference, or where it has none from party and
    text, and from the place among equal bookings. Equal bookings are counted on from one statement to the next while
    the balances join (closing = opening); a statement that begins anew counts anew, for it may overlap.

    Two equal bookings of one day without a reference are told apart only in a file that holds the whole day.
    """
    found: list[tuple[str, ...]] = []
    seen: dict[str, Counter[str]] = {}
    closings: dict[str, Decimal | None] = {}
    for statement in statements:
        account = statement.account
        if statement.opening is None or closings.get(account) != statement.opening:
            seen[account] = Counter()
        found.append(tuple(_numbered(account, statement.lines, seen[account])))
        closings[account] = statement.closing
    return found


def without_copies(statements: Iterable[ReadStatement]) -> list[ReadStatement]:
    """Statements that stand twice in one file, word for word, count once."""
    return list(dict.fromkeys(statements))


def _numbered(account: str, lines: Iterable[BankLine], seen: Counter[str]) -> Iterable[str]:
    for line in lines:
        told = _told(account, line)
        seen[told] += 1
        yield f"{told}-{seen[told]}"


def _told(account: str, line: BankLine) -> str:
    named = line.bank_reference.strip()
    what = (named,) if named.upper() not in NO_REFERENCE else _words(line)
    facts = (account, line.booked_on.isoformat(), f"{line.amount.normalize():f}", line.currency, *what)
    return hashlib.sha256("\x1f".join(facts).encode()).hexdigest()[:40]


def _words(line: BankLine) -> tuple[str, ...]:
    return ("", line.party_name, line.party_account, line.reference, " ".join(line.text.split()))
