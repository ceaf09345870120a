"""The body of an answer, never more of it than we want to hold, packed or not."""

import zlib
from collections.abc import Iterable

from trimops.outside.no_answer import NoAnswer, Why

PACKED = frozenset({"gzip", "x-gzip", "deflate"})
PLAIN = frozenset({"", "identity"})
# Of zlib: the packing (gzip or zlib) is told by its first bytes.
EITHER_KIND = 47


def bounded_body(parts: Iterable[bytes], packing: str, largest: int) -> bytes:
    """`parts` put together and unpacked. NoAnswer: larger than `largest` bytes in either form, or broken."""
    kind = packing.strip().lower()
    if kind in PLAIN:
        return _joined(parts, largest)
    if kind not in PACKED:
        raise NoAnswer(Why.BROKE_OFF, "the answer is packed in a way that is not read here")
    return _unpacked(parts, largest)


def _joined(parts: Iterable[bytes], largest: int) -> bytes:
    body = bytearray()
    for part in parts:
        body += part
        _refuse_larger(len(body), largest)
    return bytes(body)


def _unpacked(parts: Iterable[bytes], largest: int) -> bytes:
    unpacker = zlib.decompressobj(EITHER_KIND)
    body, came = bytearray(), 0
    for part in parts:
        came += len(part)
        _refuse_larger(came, largest)
        try:
            # because: a thousand bytes may unpack to a million, so no more is unpacked than is asked for
            body += unpacker.decompress(part, largest - len(body) + 1)
        except zlib.error:
            raise NoAnswer(Why.BROKE_OFF, "the answer cannot be unpacked") from None
        _refuse_larger(len(body), largest)
    if not unpacker.eof:
        raise NoAnswer(Why.BROKE_OFF, "the answer broke off")
    return bytes(body)


def _refuse_larger(size: int, largest: int) -> None:
    if size > largest:
        raise NoAnswer(Why.LARGE, f"the answer is larger than {largest:,} bytes")
