"""What a bank's file says, whatever its form."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

MOST_BYTES = 5 * 1024 * 1024
MOST_BOOKINGS = 20_000
"""Read in seconds; more keep everybody's pages waiting."""
_FIRST_YEAR, _LAST_YEAR = 1970, 2199
_SUM_BELOW, _FINEST = Decimal(10) ** 10, -4


class UnreadableBankFile(ValueError):
    """The file cannot be read; the message says why and where."""


@dataclass(frozen=True)
class BankLine:
    """One booking. `amount` below nought left the account. `reference`: the structured one, if it carries one.

    `bank_reference` is the bank's own name for the booking. `charges` were kept back before it was booked.
    """

    booked_on: date
    amount: Decimal
    currency: str
    party_name: str = ""
    party_account: str = ""
    reference: str = ""
    text: str = ""
    bank_reference: str = ""
    charges: Decimal = Decimal(0)
    is_reversal: bool = False


@dataclass(frozen=True)
class ReadStatement:
    """One statement: the account, what was on it before and after (if told), its bookings, what is odd about it."""

    name: str
    account: str
    currency: str
    lines: tuple[BankLine, ...]
    opening: Decimal | None = None
    closing: Decimal | None = None
    warnings: tuple[str, ...] = ()

    @property
    def first_day(self) -> date | None:
        return min((line.booked_on for line in self.lines), default=None)

    @property
    def last_day(self) -> date | None:
        return max((line.booked_on for line in self.lines), default=None)


def balance_warning(opening: Decimal | None, closing: Decimal | None, lines: tuple[BankLine, ...]) -> str:
    """A sentence when opening balance and bookings do not come to the closing balance; else empty."""
    if opening is None or closing is None:
        return ""
    reckoned = opening + sum((line.amount for line in lines), Decimal(0))
    if reckoned == closing:
        return ""
    return (
        f"Opening balance and bookings come to {reckoned}, but the closing balance is {closing}: "
        "bookings may be missing in this file."
    )


def refuse_size(content: bytes) -> None:
    """UnreadableBankFile for an empty file or one over 5 MB."""
    if not content.strip():
        raise UnreadableBankFile("The file is empty.")
    if len(content) > MOST_BYTES:
        raise UnreadableBankFile("The file is larger than 5 MB: ask the bank for shorter periods.")


def refuse_many(count: int) -> None:
    """UnreadableBankFile for more bookings than are read at once."""
    if count > MOST_BOOKINGS:
        raise UnreadableBankFile(
            f"The file holds more than {MOST_BOOKINGS} bookings: ask the bank for shorter periods."
        )


def is_sum_of_bank(amount: Decimal) -> bool:
    """True for what can be booked: a number below ten milliards with four decimals at most."""
    if not amount.is_finite() or not -_SUM_BELOW < amount < _SUM_BELOW:
        return False
    exponent = amount.as_tuple().exponent
    return isinstance(exponent, int) and (exponent >= _FINEST or amount == round(amount, -_FINEST))


def is_day_of_bank(day: date) -> bool:
    """False for what is a slip: the year 26, or 9999 for "never"."""
    return _FIRST_YEAR <= day.year <= _LAST_YEAR
