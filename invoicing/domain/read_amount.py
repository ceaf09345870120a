"""An amount as people type it, with comma or point."""

import re
from decimal import Decimal, InvalidOperation

_BLANKS = re.compile(r"[\s'\u2019\u00a0\u202f]")
_UNCLEAR = re.compile(r"-?[1-9][0-9]{0,2},[0-9]{3}")


def read_amount(text: str) -> Decimal:
    """`"1,234.50"`, `"1.234,50"` and `"1 234,5"` are amounts of about 1234; `"12,5"` is twelve and a half.

    ValueError for what is no number, and for `"1,234"`, which may be a thousand or little more than one.
    """
    packed = _BLANKS.sub("", text)
    if _UNCLEAR.fullmatch(packed):
        whole, rest = packed.split(",")
        raise ValueError(f"Is that {whole}{rest} or {whole}.{rest}? Write it without the comma.")
    last = max(packed.rfind(","), packed.rfind("."))
    is_grouping = last < 0 or packed.count(packed[last]) > 1
    whole, rest = (packed, "") if is_grouping else (packed[:last], packed[last + 1 :])
    plain = re.sub(r"[,.](?=[0-9]{3}(?:[,.]|$))", "", whole)
    try:
        if not re.fullmatch(r"-?[0-9]*", plain, re.ASCII) or not re.fullmatch(r"[0-9]*", rest, re.ASCII):
            raise InvalidOperation
        return Decimal(f"{plain}.{rest}" if rest else plain)
    except InvalidOperation:
        raise ValueError("Write a number, such as 12.50.") from None
