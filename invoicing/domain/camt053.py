"""Bank statements in ISO 20022 CAMT.053 (camt.053.001.02 to .14): the statements of a file with what was booked.

Read as the schemas of versions 02 and 08 lay it out (fixtures/bank); elements are found whatever their namespace.
"""

from collections.abc import Iterator
from datetime import date
from decimal import Decimal, InvalidOperation

from lxml import etree
from lxml.etree import _Element as Element

from invoicing.domain.bank_entry_key import without_copies
from invoicing.domain.bank_file import (
    MOST_BOOKINGS,
    BankLine,
    ReadStatement,
    UnreadableBankFile,
    balance_warning,
    is_day_of_bank,
    is_sum_of_bank,
    refuse_many,
    refuse_size,
)
from invoicing.domain.camt_details import booking_lines, first_text

MOST_TAGS = 500_000
"""Twenty-five for each of the bookings that are read at most: each is held in memory while the file is read."""
SPACE = "urn:iso:std:iso:20022:tech:xsd:camt.053.001."
BOOKED = "BOOK"


def read_camt053(content: bytes) -> list[ReadStatement]:
    """Every statement of the file; only what is booked, pending lines are counted in a warning.

    UnreadableBankFile when it is no CAMT.053, is broken, too large, declares a DOCTYPE, or a booking has no day or no
    amount that can be. Nothing outside of the file is read.
    """
    root = _root(content)
    refuse_many(sum(1 for _ in root.iter("{*}Ntry", "{*}TxDtls")))
    statements = [_statement(element) for element in root.iterfind("{*}BkToCstmrStmt/{*}Stmt")]
    if not statements:
        raise UnreadableBankFile("There is no statement in the file.")
    return without_copies(statements)


def looks_like_xml(content: bytes) -> bool:
    return content.lstrip(b"\xef\xbb\xbf \t\r\n")[:1] == b"<" or content[:4] in (
        b"\xff\xfe<\0",
        b"\xfe\xff\0<",
    )


def _root(content: bytes) -> Element:
    refuse_size(content)
    if b"<!DOCTYPE" in content[:10_000]:
        raise UnreadableBankFile("The file declares a DOCTYPE, which no statement has: it is not read.")
    if content.count(b"<") > MOST_TAGS:  # because: in UTF-16 it is there too, between noughts
        refuse_many(MOST_BOOKINGS + 1)
    parser = etree.XMLParser(resolve_entities=False, no_network=True, load_dtd=False, huge_tree=False)
    try:
        root = etree.fromstring(content, parser)
    except (etree.XMLSyntaxError, ValueError) as fault:
        raise UnreadableBankFile(f"The file is broken: {fault}") from fault
    if root.getroottree().docinfo.doctype:
        raise UnreadableBankFile("The file declares a DOCTYPE, which no statement has: it is not read.")
    name = etree.QName(root)
    if name.localname != "Document" or not (name.namespace or "").startswith(SPACE):
        raise UnreadableBankFile("This is no CAMT.053 statement: ask the bank for “statement, CAMT.053”.")
    return root


def _statement(element: Element) -> ReadStatement:
    lines: list[BankLine] = []
    waiting = 0
    warnings: list[str] = []
    for place, entry in enumerate(element.iterfind("{*}Ntry"), 1):
        if first_text(entry, "Sts/Cd", "Sts") != BOOKED:
            waiting += 1
            continue
        lines += _booking(entry, place, warnings)
    opening, closing = _balance(element, "OPBD", "PRCD"), _balance(element, "CLBD")
    if waiting:
        warnings.append(f"Not booked yet, so left out: {waiting}.")
    if odd := balance_warning(opening, closing, tuple(lines)):
        warnings.append(odd)
    return ReadStatement(
        name=first_text(element, "Id"),
        account=first_text(element, "Acct/Id/IBAN", "Acct/Id/Othr/Id"),
        currency=first_text(element, "Acct/Ccy") or (lines[0].currency if lines else ""),
        lines=tuple(lines),
        opening=opening,
        closing=closing,
        warnings=tuple(warnings),
    )


def _booking(entry: Element, place: int, warnings: list[str]) -> Iterator[BankLine]:
    amount = _signed(entry, f"Entry {place}")
    day = _day(entry, place)
    currency = entry.find("{*}Amt").get("Ccy", "")
    lines, odd = booking_lines(entry, day, amount, currency)
    warnings += [f"Entry {place}: {words}" for words in odd]
    yield from lines


def _signed(element: Element, what: str) -> Decimal:
    sign = {"CRDT": 1, "DBIT": -1}.get(first_text(element, "CdtDbtInd"))
    try:
        amount = Decimal(first_text(element, "Amt"))
    except InvalidOperation:
        amount = Decimal("NaN")
    if sign is None or not is_sum_of_bank(amount) or amount < 0:
        raise UnreadableBankFile(f"{what} has no amount, or does not say whether it came or went.")
    return sign * amount


def _day(entry: Element, place: int) -> date:
    told = first_text(entry, "BookgDt/Dt", "BookgDt/DtTm", "ValDt/Dt", "ValDt/DtTm")
    try:
        day = date.fromisoformat(told[:10])
    except ValueError:
        day = date.min
    if not is_day_of_bank(day):
        raise UnreadableBankFile(f"Entry {place} has no day on which it was booked.")
    return day


def _balance(statement: Element, *codes: str) -> Decimal | None:
    """The balance of the first of these codes that is there (opening: OPBD, or PRCD, the closing one before)."""
    told = {first_text(row, "Tp/CdOrPrtry/Cd"): row for row in reversed(statement.findall("{*}Bal"))}
    for code in codes:
        if code in told:
            return _signed(told[code], f"The balance {code}")
    return None
