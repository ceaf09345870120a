"""One booked entry of a CAMT.053 statement: who, what for, and the single payments of a batch."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal, InvalidOperation

from lxml.etree import _Element as Element

from invoicing.domain.bank_file import BankLine, is_sum_of_bank

NOTHING_SAID = "NOTPROVIDED"


def booking_lines(
    entry: Element, day: date, amount: Decimal, currency: str
) -> tuple[list[BankLine], list[str]]:
    """The lines of one entry and what is odd about it.

    A batch (several TxDtls) becomes one line for each payment when their amounts add up to the entry; else it stays one
    line that holds the words of all, and that is said.
    """
    details = entry.findall("{*}NtryDtls/{*}TxDtls")
    if len(details) < 2:
        return [_line(entry, details, day, amount, currency)], []
    parts = [_amount_of(detail, amount, currency) for detail in details]
    if None in parts or sum((part for part in parts if part is not None), Decimal(0)) != amount:
        odd = f"holds {len(details)} payments whose amounts do not add up to it, so it came as one booking."
        return [_line(entry, details, day, amount, currency)], [odd]
    lines = [
        _line(entry, [detail], day, part, currency, place)
        for place, (detail, part) in enumerate(zip(details, parts, strict=True), 1)
        if part is not None
    ]
    return lines, []


def first_text(element: Element, *paths: str) -> str:
    """The text at the first of these paths that has any; names without namespace, parted by /."""
    for path in paths:
        found = element.findtext("/".join(f"{{*}}{name}" for name in path.split("/")))
        if found and found.strip():
            return str(found.strip())
    return ""


def _line(
    entry: Element, details: Sequence[Element], day: date, amount: Decimal, currency: str, place: int = 0
) -> BankLine:
    """`place`: of one payment within its batch, 0 for an entry as a whole."""
    one = details[0] if len(details) == 1 else None
    party, account = _party(one, amount) if one is not None else ("", "")
    named = first_text(entry, "AcctSvcrRef")
    if place and one is not None:
        own = first_text(one, "Refs/AcctSvcrRef")
        named = f"{named}/{own or place}" if named or own else ""
    return BankLine(
        booked_on=day,
        amount=amount,
        currency=currency,
        party_name=party[:140],
        party_account=account[:40],
        reference=first_text(one, "RmtInf/Strd/CdtrRefInf/Ref")[:140] if one is not None else "",
        text=_text(entry, details),
        bank_reference=named,
        charges=_charges(details, currency) or _charges([] if place else [entry], currency),
        is_reversal=first_text(entry, "RvslInd") in ("true", "1"),
    )


def _amount_of(detail: Element, whole: Decimal, currency: str) -> Decimal | None:
    """The payment's amount in the entry's currency, with its sign; None when it is not told."""
    for path in ("{*}Amt", "{*}AmtDtls/{*}TxAmt/{*}Amt"):
        found = detail.find(path)
        if found is not None and found.get("Ccy") == currency:
            sign = {"CRDT": 1, "DBIT": -1}.get(first_text(detail, "CdtDbtInd"), 1 if whole >= 0 else -1)
            return sign * _decimal(found.text)
    return None


def _party(detail: Element, amount: Decimal) -> tuple[str, str]:
    """Name and account of the other side: the debtor of what came in, the creditor of what went out.

    Where that side is not told (a payment called back, say) it is the other. Version 02 has `Dbtr/Nm`, from 08 on it is
    `Dbtr/Pty/Nm`.
    """
    for side in ("Dbtr", "Cdtr") if amount > 0 else ("Cdtr", "Dbtr"):
        names = [f"RltdPties/{who}/{path}" for who in (side, f"Ultmt{side}") for path in ("Nm", "Pty/Nm")]
        account = f"RltdPties/{side}Acct/Id"
        found = first_text(detail, *names), first_text(detail, f"{account}/IBAN", f"{account}/Othr/Id")
        if any(found):
            return found
    return "", ""


def _text(entry: Element, details: Sequence[Element]) -> str:
    words: list[str] = []
    for detail in details:
        words += [found.text or "" for found in detail.iterfind("{*}RmtInf/{*}Ustrd")]
        if len(details) > 1:
            words.append(first_text(detail, "RmtInf/Strd/CdtrRefInf/Ref"))
        words.append(first_text(detail, "AddtlTxInf"))
        words.append(first_text(detail, "Refs/EndToEndId").replace(NOTHING_SAID, ""))
    words.append(first_text(entry, "AddtlNtryInf"))
    return " ".join(" ".join(words).split())


def _charges(elements: Sequence[Element], currency: str) -> Decimal:
    """What banks kept back: charges (02: in `Chrgs`, 08: in its records) that are not said to be booked apart."""
    rows = [
        row for path in ("{*}Chrgs/{*}Rcrd", "{*}Chrgs") for part in elements for row in part.findall(path)
    ]
    total = Decimal(0)
    for row in rows:
        found = row.find("{*}Amt")
        apart = first_text(row, "ChrgInclInd") in ("false", "0") or first_text(row, "CdtDbtInd") == "CRDT"
        if found is not None and found.get("Ccy") == currency and not apart:
            total += _decimal(found.text)
    return total


def _decimal(text: str | None) -> Decimal:
    try:
        found = Decimal((text or "").strip())
    except InvalidOperation:
        return Decimal(0)
    return found if is_sum_of_bank(found) else Decimal(0)
