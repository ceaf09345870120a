"""How each bomb is made. None is made before it is wanted: some take longer to make than to refuse."""

import io
import json
import zipfile
import zlib
from collections.abc import Callable
from dataclasses import dataclass

from PIL import Image

from tests.fuzz.real_files import tables

MB = 1024 * 1024
CAMT = b'<Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.08"><BkToCstmrStmt><Stmt>'
CAMT_END = b"</Stmt></BkToCstmrStmt></Document>"
ENTRY = (
    b"<Ntry><Amt Ccy='EUR'>1</Amt><CdtDbtInd>CRDT</CdtDbtInd><Sts>BOOK</Sts>"
    b"<BookgDt><Dt>2026-03-02</Dt></BookgDt></Ntry>"
)
HEAD = b"<worksheet xmlns='http://schemas.openxmlformats.org/spreadsheetml/2006/main'><sheetData>"
FOOT = b"</sheetData></worksheet>"
LETTERS = 5 * MB - 20


@dataclass(frozen=True)
class Bomb:
    """What it is, its inlet, the file. A slow one takes a second or more to be made or read: left to `make bench`."""

    what: str
    inlet: str
    make: Callable[[], bytes]
    is_slow: bool = False


WORDS = "xl/sharedStrings.xml"
KIND_OF_WORDS = (
    b'<Override PartName="/xl/sharedStrings.xml" ContentType="application/vnd.openxmlformats-officedocument.'
    b'spreadsheetml.sharedStrings+xml"/></Types>'
)
LIST = b'<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'


def _sheet(body: bytes, words: bytes = b"<si><t>cow 7</t></si>") -> bytes:
    """A spreadsheet with that sheet, and a list of words beside it."""
    source = zipfile.ZipFile(io.BytesIO(tables("herd")[-1]))
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as packed:
        for name in set(source.namelist()) - {WORDS}:
            part = body if name == "xl/worksheets/sheet1.xml" else source.read(name)
            packed.writestr(name, part.replace(b"</Types>", KIND_OF_WORDS))
        packed.writestr(WORDS, LIST + words + b"</sst>")
    return out.getvalue()


def _rows(cell: bytes, cells: int, rows: int) -> bytes:
    return _sheet(HEAD + (b"<row>" + cell * cells + b"</row>") * rows + FOOT)


def _multiplying() -> bytes:
    entities = "".join(f'<!ENTITY a{n} "{f"&a{n - 1};" * 10}">' for n in range(1, 10))
    return f'<!DOCTYPE a [<!ENTITY a0 "lol">{entities}]><worksheet>&a9;</worksheet>'.encode()


def _in_statement(body: bytes, before: bytes = b"") -> bytes:
    return before + CAMT + body + CAMT_END


def _calendar(*lines: str) -> bytes:
    return "\r\n".join(
        ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//x", *lines, "END:VCALENDAR", ""]
    ).encode()


def _event(*lines: str, count: int = 1, begin: str = "DTSTART:20000101T000000Z") -> bytes:
    """A calendar of so many entries like this."""
    entries = [
        line for n in range(count) for line in ("BEGIN:VEVENT", f"UID:{n}", begin, *lines, "END:VEVENT")
    ]
    return _calendar(*entries)


def _picture(mode: str, size: tuple[int, int], kind: str) -> bytes:
    out = io.BytesIO()
    Image.new(mode, size).save(out, kind)
    return out.getvalue()


def _png_with(kind: bytes) -> bytes:
    """A PNG of 64 dots with a piece that unpacks to 100 MB."""
    whole, body = _picture("RGB", (8, 8), "PNG"), b"a\0\0" + zlib.compress(b"x" * (100 * MB))
    chunk = len(body).to_bytes(4, "big") + kind + body + zlib.crc32(kind + body).to_bytes(4, "big")
    return whole[:33] + chunk + whole[33:]


def _every(step: int, count: int) -> str:
    return ",".join(map(str, range(0, count, step)))


SHEETS = (
    Bomb("zip of 200 MB of nothing", "herd list", lambda: _sheet(b" " * (200 * MB)), is_slow=True),
    Bomb("a row of 300,000 cells", "herd list", lambda: _rows(b"<c/>", 300_000, 1)),
    Bomb("nine million rows", "herd list", lambda: _sheet(HEAD + b"<row/>" * 6_500_000 + FOOT), is_slow=True),
    Bomb("words that multiply", "herd list", lambda: _sheet(_multiplying())),
    Bomb("tags within tags", "herd list", lambda: _sheet(b"<c>" * 300_000)),
    Bomb(
        "a word of 39 MB",
        "herd list",
        lambda: _rows(b"<c t='inlineStr'><is><t>" + b"x" * (39 * MB) + b"</t></is></c>", 1, 1),
        is_slow=True,
    ),
    Bomb(
        "words by the hundred thousand",
        "herd list",
        lambda: _sheet(HEAD + FOOT, b"<si><t>x</t></si>" * 300_000),
    ),
    Bomb(
        "as many cells as are read at all",
        "herd list",
        lambda: _rows(b"<c t='s'><v>0</v></c>", 24, 5_001),
        is_slow=True,
    ),
    Bomb(
        "as many words, and as many cells",
        "herd list",
        lambda: _sheet(
            HEAD + (b"<row>" + b"<c t='s'><v>9</v></c>" * 24 + b"</row>") * 3_300 + FOOT,
            b"<si><t>cow 7</t></si>" * 39_999,
        ),
        is_slow=True,
    ),
    Bomb(
        "as many words in their cells",
        "herd list",
        lambda: _rows(b"<c t='inlineStr'><is><t>cow 7</t></is></c>", 40, 999),
        is_slow=True,
    ),
)
TABLES = tuple(
    Bomb(what, inlet, make)
    for inlet in ("herd list", "kit list", "bank CSV")
    for what, make in {
        "five million empty lines": lambda: b"Number\n7\n" + b"\n" * LETTERS,
        "five million cells in a line": lambda: b"Number" + b"," * LETTERS + b"\n7\n",
        "one cell of 5 MB": lambda: b'Number\n"' + b"x" * LETTERS + b'"',
        "quotes and no end": lambda: b"Number\n" + b'"' * LETTERS,
        "one letter a line": lambda: b"Number\n" + b"7\n" * (LETTERS // 2),
    }.items()
)
STATEMENTS = (
    Bomb("words that multiply", "CAMT.053", _multiplying),
    Bomb(
        "a file from this machine",
        "CAMT.053",
        lambda: _in_statement(b"&x;", b'<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/passwd">]>'),
    ),
    Bomb("nothing but tags", "CAMT.053", lambda: _in_statement(b"<a/>" * 1_200_000)),
    Bomb("tags up to the last that is read", "CAMT.053", lambda: _in_statement(b"<a b='c'/>" * 499_000)),
    Bomb("tags within tags", "CAMT.053", lambda: CAMT + b"<a>" * 200_000),
    Bomb(
        "attributes by the hundred thousand",
        "CAMT.053",
        lambda: _in_statement(b"<a " + b" ".join(b"a%d='1'" % n for n in range(300_000)) + b"/>"),
    ),
    Bomb("bookings without end", "CAMT.053", lambda: _in_statement(b"<Ntry/>" * 400_000)),
    Bomb("as many bookings as are read", "CAMT.053", lambda: _in_statement(ENTRY * 20_000), is_slow=True),
)
RULES = (
    *("FREQ=SECONDLY", "FREQ=MINUTELY;BYSECOND=1,2,3", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30"),
    f"FREQ=DAILY;BYHOUR={_every(1, 24)};BYMINUTE={_every(1, 60)}",
    *("FREQ=DAILY;COUNT=999999999", "FREQ=HOURLY;INTERVAL=99999;BYSETPOS=-1", "FREQ=WEEKLY;INTERVAL=0"),
)
CALENDARS = (
    *(Bomb(rule[:40], "calendar", lambda rule=rule: _event(f"RRULE:{rule}")) for rule in RULES),
    Bomb(
        "daily since 1900, sixty of them",
        "calendar",
        lambda: _event("RRULE:FREQ=DAILY", count=60, begin="DTSTART:19000101"),
        is_slow=True,
    ),
    Bomb("a line of 2 MB", "calendar", lambda: _event("SUMMARY:" + "x" * 1_900_000)),
    Bomb("a line folded 300,000 times", "calendar", lambda: _event("SUMMARY:x" + "\r\n x" * 300_000)),
    Bomb(
        "five thousand entries",
        "calendar",
        lambda: _event("DURATION:PT1H", count=5_000, begin="DTSTART:20260303T090000Z"),
        is_slow=True,
    ),
    Bomb(
        "a hundred thousand left-out days",
        "calendar",
        lambda: _event("RRULE:FREQ=DAILY", "EXDATE:" + ",".join(["20260303T000000Z"] * 100_000)),
        is_slow=True,
    ),
    Bomb(
        "a hundred thousand extra days",
        "calendar",
        lambda: _event("RDATE:" + ",".join(["20260303T000000Z"] * 100_000)),
        is_slow=True,
    ),
    Bomb("things within things", "calendar", lambda: _calendar(*["BEGIN:VEVENT"] * 4_000)),
    Bomb("parts that nobody knows", "calendar", lambda: _calendar(*["BEGIN:X", "END:X"] * 90_000)),
    Bomb(
        "as many such parts as are read",
        "calendar",
        lambda: _calendar(*["BEGIN:X", "END:X"] * 19_900),
        is_slow=True,
    ),
)
PICTURES = (
    Bomb("144 million dots", "photo", lambda: _picture("L", (12_000, 12_000), "JPEG"), is_slow=True),
    Bomb("as many dots as are read", "photo", lambda: _picture("RGB", (4_000, 3_000), "JPEG")),
    Bomb("144 million dots", "logo", lambda: _picture("L", (12_000, 12_000), "PNG"), is_slow=True),
    Bomb("as many dots as are read", "logo", lambda: _picture("RGB", (3_200, 2_500), "PNG")),
    Bomb("as many dots as are read", "logo", lambda: _picture("RGB", (3_200, 2_500), "JPEG")),
    Bomb("words of 100 MB in a PNG", "logo", lambda: _png_with(b"zTXt")),
    Bomb("colours of 100 MB in a PNG", "logo", lambda: _png_with(b"iCCP")),
)
DOCUMENTS = tuple(
    Bomb(what, inlet, make, is_slow)
    for inlet in ("week problem", "audited week", "crush batch")
    for what, is_slow, make in (
        ("brackets within brackets", False, lambda: b"[" * 1_000_000),
        ("objects within objects", False, lambda: b'{"a":' * 200_000),
        ("a number of a million digits", False, lambda: b'{"seen": ' + b"9" * 1_000_000 + b"}"),
        ("NaN", False, lambda: b'{"seen": NaN, "jobs": [Infinity]}'),
        ("the same key 200,000 times", False, lambda: b"{" + b",".join([b'"a": 1'] * 200_000) + b"}"),
        (
            "a list of 600,000",
            True,
            lambda: json.dumps({"writings": [0] * 600_000, "jobs": [{}] * 100_000}).encode(),
        ),
    )
)
BOMBS = (*SHEETS, *TABLES, *STATEMENTS, *CALENDARS, *PICTURES, *DOCUMENTS)
