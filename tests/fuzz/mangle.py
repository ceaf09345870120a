"""Real files spoilt: cut off, bits turned, pieces of another put in, numbers made huge. Same dice, same file."""

import re
from collections.abc import Sequence
from random import Random

LONGEST = 400_000
"""Bytes that a spoilt file has at most; what is larger is tried by the bombs."""
NASTY = (
    *(
        b"\x00",
        b"\xff",
        b"\xff\xfe",
        b"\xef\xbb\xbf",
        b"\r",
        b"\n\n\n",
        b'"',
        b";;;;",
        b",",
        b"\t",
        b"'",
        b"=",
    ),
    *(
        b"<!DOCTYPE a [<!ENTITY b 'c'>]>",
        b"<![CDATA[",
        b"&#0;",
        b"&lol;",
        b"</Ntry>",
        b"<Ntry>",
        b"-->",
        b"]]>",
    ),
    *(b"99999999999999999999", b"-1", b"1e999", b"NaN", b"Infinity", b"0x1", b"9" * 5_000, b"0.000000001"),
    *(b"\xf0\x9f\x90\x84", b"\xe2\x80\xae", b"\xed\xa0\x80", b"[" * 3_000, b"{" * 500, b'{"a":' * 500),
    *(b"RRULE:FREQ=SECONDLY\r\n", b"BEGIN:VEVENT\r\n", b"DTSTART:99991231T235959Z\r\n", b"../../etc/passwd"),
    *(
        b"0001-01-01",
        b"9999-12-31",
        b"31.02.2026",
        b"2026-13-45",
        b"PK\x03\x04",
        b"PK\x05\x06",
        b"\xff\xd8\xff",
    ),
)
NUMBER = re.compile(rb"\d+")


def mangled(real: bytes, others: Sequence[bytes], dice: Random) -> bytes:
    """`real` spoilt in one to four ways, with pieces of `others` now and then."""
    spoilt = bytearray(real)
    for _ in range(dice.randint(1, 4)):
        dice.choice(WAYS)(spoilt, others, dice)
    return bytes(spoilt[:LONGEST])


def _cut_off(file: bytearray, others: Sequence[bytes], dice: Random) -> None:
    del file[dice.randint(0, len(file)) :]


def _without_its_head(file: bytearray, others: Sequence[bytes], dice: Random) -> None:
    del file[: dice.randint(0, min(len(file), 200))]


def _turn_bits(file: bytearray, others: Sequence[bytes], dice: Random) -> None:
    for _ in range(dice.choice((1, 1, 3, 40)) if file else 0):
        file[dice.randrange(len(file))] ^= 1 << dice.randrange(8)


def _take_out(file: bytearray, others: Sequence[bytes], dice: Random) -> None:
    at = dice.randint(0, len(file))
    del file[at : at + dice.choice((1, 7, 60, 900))]


def _twice(file: bytearray, others: Sequence[bytes], dice: Random) -> None:
    at = dice.randint(0, len(file))
    file[at:at] = file[at : at + dice.choice((5, 80, 2_000))] * dice.choice((1, 3, 50))


def _put_in(file: bytearray, others: Sequence[bytes], dice: Random) -> None:
    at = dice.randint(0, len(file))
    file[at : at + dice.choice((0, 0, 4))] = dice.choice(NASTY)


def _splice(file: bytearray, others: Sequence[bytes], dice: Random) -> None:
    other = dice.choice(others) if others else bytes(file)
    at, cut = dice.randint(0, len(file)), dice.randint(0, len(other))
    file[at:] = other[cut:]


def _swell(file: bytearray, others: Sequence[bytes], dice: Random) -> None:
    found = list(NUMBER.finditer(bytes(file[:60_000])))
    if found:
        number = dice.choice(found)
        file[number.start() : number.end()] = dice.choice(
            (b"0", b"-7", b"99999999999", b"4294967296", b"1e400")
        )


WAYS = (_cut_off, _without_its_head, _turn_bits, _take_out, _twice, _put_in, _splice, _swell)
