"""A bank's CSV, read by a mapping: which column holds what, how days and amounts are written."""

import csv
import io
import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from invoicing.domain.bank_file import (
    BankLine,
    ReadStatement,
    UnreadableBankFile,
    is_day_of_bank,
    is_sum_of_bank,
    refuse_many,
    refuse_size,
)
from invoicing.domain.minor_units import minor_digits
from trimops.kernel.money import round_money

DAY_FORMATS = {
    "%Y-%m-%d": "2026-03-04",
    "%d/%m/%Y": "04/03/2026",
    "%d.%m.%Y": "04.03.2026",
    "%d-%m-%Y": "04-03-2026",
    "%m/%d/%Y": "03/04/2026",
    "%d/%m/%y": "04/03/26",
    "%d.%m.%y": "04.03.26",
    "%d %b %Y": "04 Mar 2026",
    "%Y%m%d": "20260304",
}
ENCODINGS = ("utf-8-sig", "cp1252", "utf-16")
DELIMITERS = (";", ",", "\t", "|")
MOST_FAULTS_TOLD = 8
MOST_COLUMNS = 100
_HEADS_AND_SUMS = 100
"""Rows above and below the bookings: fifty each, as the form lets choose."""
_LOOKED_AT = 60_000
"""Bytes from which the form of a file is guessed: its first lines."""
# A sign before, or after, or brackets.
_SIGNED = re.compile(r"([+-]?)([0-9.,']+)|(\()([0-9.,']+)\)|([0-9.,']+)([+-])")
_GROUPED = re.compile(r"\d{1,3}(?:([.,'])\d{3})(?:\1\d{3})*|\d+")


@dataclass(frozen=True)
class CsvMapping:
    """Columns are counted from 0; None: there is none. Either `amount`, or `credit` and `debit` (both without sign).

    With `mark`, the amount has no sign: that column says `credit_word` where it came, `debit_word` where it went.
    """

    encoding: str = "utf-8-sig"
    delimiter: str = ";"
    decimal: str = ","
    day_format: str = "%d.%m.%Y"
    header_rows: int = 1
    footer_rows: int = 0
    day: int = 0
    amount: int | None = None
    credit: int | None = None
    debit: int | None = None
    mark: int | None = None
    credit_word: str = ""
    debit_word: str = ""
    party: int | None = None
    account: int | None = None
    reference: int | None = None
    bank_reference: int | None = None
    text: tuple[int, ...] = ()


def csv_rows(content: bytes, encoding: str, delimiter: str) -> list[tuple[int, list[str]]]:
    """Every row that is not empty, with the number of its last line. UnreadableBankFile for other encodings.

    And for more columns or lines than a statement has.
    """
    refuse_size(content)
    text = _text(content, encoding)
    refuse_many(max(text.count("\n"), text.count("\r")) - _HEADS_AND_SUMS)
    try:
        reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
        rows = [(reader.line_num, row) for row in reader]
    except (csv.Error, TypeError) as fault:  # because: a delimiter of two letters is no delimiter
        raise UnreadableBankFile(f"The columns cannot be told apart: {fault}.") from fault
    if any(len(row) > MOST_COLUMNS for _, row in rows):
        raise UnreadableBankFile(f"A line has more than {MOST_COLUMNS} columns: choose what parts them.")
    return [(line, row) for line, row in rows if any(cell.strip() for cell in row)]


def _text(content: bytes, encoding: str) -> str:
    """Only the encodings that a person may choose are tried: some that Python knows take minutes."""
    try:
        text = content.decode(encoding) if encoding in ENCODINGS else "\0"
    except UnicodeError:
        text = "\0"
    if "\0" in text:
        name = encoding if encoding in ENCODINGS else "such letters"
        raise UnreadableBankFile(f"The file is not written in {name}: choose another.")
    return text


def refuse_what_is_no_text(content: bytes) -> None:
    """UnreadableBankFile for a picture, a PDF, a spreadsheet: what holds no letters in any way of writing them."""
    for encoding in ENCODINGS:
        try:
            _text(content, encoding)
        except UnreadableBankFile:
            continue
        return
    raise UnreadableBankFile("This is neither CAMT.053 nor CSV: ask the bank for one of these.")


def guess_mapping(content: bytes) -> CsvMapping:
    """A first guess at encoding, delimiter, point or comma, and the day; what else is where, a person says."""
    encoding = _encoding(content)
    text = content[:_LOOKED_AT].decode(encoding, errors="replace")
    lines = text.splitlines()[:30]
    delimiter = max(DELIMITERS, key=lambda sign: sum(1 for line in lines if line.count(sign) >= 2))
    comma, point = (len(re.findall(rf"\d[{sign}]\d\d(?!\d)", text)) for sign in (",", "."))
    rows = [line.split(delimiter)[:MOST_COLUMNS] for line in lines]
    day, day_format = _guessed_day([[cell.strip(' "') for cell in row] for row in rows])
    decimal = "," if comma > point else "."
    return CsvMapping(encoding, delimiter, decimal, day_format, day=day)


def _guessed_day(rows: Sequence[Sequence[str]]) -> tuple[int, str]:
    """The column and the format in which most rows have a day; of formats alike the one named first."""
    found = Counter(
        (column, day_format)
        for row in rows
        for day_format in DAY_FORMATS
        for column, cell in enumerate(row)
        if _is_day(cell, day_format)
    )
    return max(found, key=lambda key: found[key], default=(0, "%d.%m.%Y"))


def _is_day(text: str, day_format: str) -> bool:
    try:
        _day(text, day_format)
    except ValueError:
        return False
    return True


def _encoding(content: bytes) -> str:
    if content[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return "utf-16"
    try:
        content.decode("utf-8-sig")
    except UnicodeError:
        return "cp1252"
    return "utf-8-sig"


def read_bank_csv(content: bytes, mapping: CsvMapping, currency: str) -> ReadStatement:
    """The bookings of the file, all or none: UnreadableBankFile names each line that cannot be read."""
    rows = csv_rows(content, mapping.encoding, mapping.delimiter)
    rows = rows[mapping.header_rows : len(rows) - mapping.footer_rows]
    lines, faults = [], []
    for number, row in rows:
        try:
            lines.append(_line(row, mapping, currency))
        except ValueError as fault:
            faults.append(f"Line {number}: {fault}")
    if faults:
        more = len(faults) - MOST_FAULTS_TOLD
        told = [*faults[:MOST_FAULTS_TOLD], *([f"And {more} more."] if more > 0 else [])]
        raise UnreadableBankFile(" ".join(told))
    if not lines:
        raise UnreadableBankFile("No line is left after the head and foot rows.")
    return ReadStatement("", "", currency, tuple(lines))


def _line(row: Sequence[str], mapping: CsvMapping, currency: str) -> BankLine:
    return BankLine(
        booked_on=_day(_cell(row, mapping.day), mapping.day_format),
        amount=_signed(row, mapping, minor_digits(currency)),
        currency=currency,
        party_name=_cell(row, mapping.party)[:140],
        party_account=_cell(row, mapping.account)[:40],
        reference=_cell(row, mapping.reference)[:140],
        bank_reference=_cell(row, mapping.bank_reference),
        text=" ".join(" ".join(_cell(row, column) for column in mapping.text).split()),
    )


def _cell(row: Sequence[str], column: int | None) -> str:
    return row[column].strip() if column is not None and column < len(row) else ""


def _day(text: str, day_format: str) -> date:
    try:
        day = datetime.strptime(text, day_format).date()  # noqa: DTZ007  # because: a day has no zone
    except ValueError:
        day = date.min
    if not is_day_of_bank(day):
        raise ValueError(f"“{text[:40]}” is no day like {DAY_FORMATS.get(day_format, day_format)}.")
    return day


def _signed(row: Sequence[str], mapping: CsvMapping, digits: int) -> Decimal:
    if mapping.amount is not None:
        amount = read_amount(_cell(row, mapping.amount), mapping.decimal, digits)
        return amount if mapping.mark is None else _marked(amount, _cell(row, mapping.mark), mapping)
    told = list(_told(row, mapping, digits))
    if len(told) != 1:
        raise ValueError("one of the two amount columns must hold an amount, and only one.")
    return told[0]


def _marked(amount: Decimal, word: str, mapping: CsvMapping) -> Decimal:
    if word not in (mapping.credit_word, mapping.debit_word):
        raise ValueError(f"“{word}” says neither that it came nor that it went.")
    return abs(amount) if word == mapping.credit_word else -abs(amount)


def _told(row: Sequence[str], mapping: CsvMapping, digits: int) -> Iterator[Decimal]:
    for column, sign in ((mapping.credit, 1), (mapping.debit, -1)):
        if (text := _cell(row, column)) and (amount := abs(read_amount(text, mapping.decimal, digits))):
            yield sign * amount


def read_amount(text: str, decimal: str, digits: int) -> Decimal:
    """ "1.234,56" with a decimal comma; signs before or after, brackets for minus, blanks between thousands.

    ValueError for anything else, also for more decimals than the currency has: they betray the wrong decimal sign.
    """
    bare = re.sub(r"[A-Z£€$]|[\s\u00a0\u202f]", "", text.replace("\N{MINUS SIGN}", "-"))
    shape = _SIGNED.fullmatch(bare)
    if shape is None:
        raise ValueError(f"“{text}” is no amount.")
    sign, body = shape[1] or shape[3] or shape[6], shape[2] or shape[4] or shape[5]
    whole, _, cents = body.partition(decimal)
    if not _GROUPED.fullmatch(whole) or not (cents.isdigit() or not cents):
        raise ValueError(f"“{text}” is no amount.")
    amount = Decimal(f"{re.sub('[^0-9]', '', whole)}.{cents or 0}")
    if not is_sum_of_bank(amount):
        raise ValueError(f"“{text[:40]}” is no amount.")
    if amount != round_money(amount, digits):
        raise ValueError(f"“{text}” has more decimals than the currency.")
    return -amount if sign in ("-", "(") else amount
