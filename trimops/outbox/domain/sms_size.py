"""How many parts a text message takes, and in which alphabet it goes.

The 7-bit default alphabet of GSM with its extension table, and UCS-2 for everything else (3GPP TS 23.038); a message of
several parts gives six bytes of each to the header that joins them (TS 23.040). Both from memory.
"""

from collections.abc import Iterable
from dataclasses import dataclass

PLAIN = (
    "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?"
    "¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà"
)
"""The 127 signs of one septet each; the 128th leads to the table below."""
EXTENDED = "\f^{}\\[~]|€"
"""Two septets each."""
ALONE_7, JOINED_7 = 160, 153
ALONE_16, JOINED_16 = 70, 67

_SEPTETS = {**dict.fromkeys(PLAIN, 1), **dict.fromkeys(EXTENDED, 2)}


@dataclass(frozen=True)
class SmsSize:
    """`units`: septets, or 16-bit code units of UCS-2. An empty text is one part."""

    is_plain: bool
    units: int
    parts: int


def sms_size(text: str) -> SmsSize:
    """What `text` takes. A sign of two units is never cut in two, so parts may stay one short of full."""
    if all(sign in _SEPTETS for sign in text):
        return _size([_SEPTETS[sign] for sign in text], ALONE_7, JOINED_7, is_plain=True)
    return _size([2 if ord(sign) > 0xFFFF else 1 for sign in text], ALONE_16, JOINED_16, is_plain=False)


def foreign_signs(text: str) -> str:
    """The signs that make a text go in the wide alphabet, each once, in their order."""
    return "".join(dict.fromkeys(sign for sign in text if sign not in _SEPTETS))


def _size(widths: Iterable[int], alone: int, joined: int, *, is_plain: bool) -> SmsSize:
    widths = list(widths)
    units = sum(widths)
    if units <= alone:
        return SmsSize(is_plain, units, 1)
    parts, room = 1, joined
    for width in widths:
        if width > room:
            parts, room = parts + 1, joined
        room -= width
    return SmsSize(is_plain, units, parts)
