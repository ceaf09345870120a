"""Whole files of each kind, as programs and phones write them: ours, and those of fixtures/ (invented)."""

import io
import json
from functools import cache
from pathlib import Path
from random import Random

from openpyxl import Workbook
from openpyxl.styles import Font
from PIL import Image

ROOT = Path(__file__).parents[2] / "fixtures"
PROBLEMS = ("three_farms.json", "audit_plain_problem.json", "audit_clock_change_problem.json")
UID = "0192f0c1-1111-7222-8333-444455556666"
AT = "2026-03-02T09:30:00Z"
HERD = [
    ["Number", "Ear tag", "Status", "Born", "Calved", "Lactation", "Group"],
    ["7", "UK 123456 700007", "in milk", "2021-04-01", "2026-01-05", "3", "A"],
    ["8", "UK 123456 100008", "dry", "2020-02-11", "", "5", "B"],
    ["Käthe", "", "heifer", "01/03/2024", "", "", ""],
]
KIT = [
    ["name", "kind", "unit", "pack", "pack price", "reorder at"],
    ["Wooden block", "block", "each", "50", "42.50", "20"],
    ["Glue", "glue", "ml", "200", "18", "400"],
]


@cache
def tables(rows_of: str) -> tuple[bytes, ...]:
    """A herd list or a kit list: CSV in three ways, and a spreadsheet."""
    rows = HERD if rows_of == "herd" else KIT
    comma, semicolon = ("\r\n".join(sign.join(row) for row in rows) for sign in ",;")
    return (comma.encode(), semicolon.encode("utf-8-sig"), semicolon.encode("utf-16"), _workbook(rows))


def _workbook(rows: list[list[str]]) -> bytes:
    book = Workbook()
    for row in rows:
        book.active.append(row)
    book.active["A1"].font = Font(bold=True)
    book.active["H2"] = "=SUM(A2:A3)"
    book.create_sheet("Notes").append(["nothing"])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


@cache
def statements() -> tuple[bytes, ...]:
    return tuple(
        (ROOT / "bank" / name).read_bytes() for name in ("camt053_v02.xml", "camt053_v08_overlap.xml")
    )


@cache
def bank_tables() -> tuple[bytes, ...]:
    return tuple((ROOT / "bank" / name).read_bytes() for name in ("semicolon_comma.csv", "comma_point.csv"))


@cache
def calendars() -> tuple[bytes, ...]:
    files = sorted((ROOT / "ical_in").glob("*.ics"))
    rules = [example["rule"] for example in _rules()]
    lines = [
        f"BEGIN:VEVENT\r\nUID:{n}\r\nDTSTAMP:20260101T000000Z\r\nDTSTART:20260105T090000Z\r\n{rule}\r\nEND:VEVENT\r\n"
        for n, rule in enumerate(rules)
    ]
    repeats = f"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//x\r\n{''.join(lines)}END:VCALENDAR\r\n"
    return (*(path.read_bytes() for path in files), repeats.encode())


def _rules() -> list[dict[str, str]]:
    words = (
        "FREQ=DAILY;COUNT=10",
        "FREQ=WEEKLY;BYDAY=MO,WE;UNTIL=20261224T000000Z",
        "FREQ=MONTHLY;BYDAY=-1FR",
    )
    return [{"rule": f"RRULE:{word}"} for word in words]


@cache
def problems() -> tuple[bytes, ...]:
    return tuple((ROOT / "week_problems" / name).read_bytes() for name in PROBLEMS)


@cache
def pictures(kind: str) -> tuple[bytes, ...]:
    """Noise and shade, with what a camera writes beside them."""
    exif = Image.Exif()
    exif[0x010E], exif[0x0112] = "the lane behind the parlour", 6
    shade = Image.linear_gradient("L").resize((320, 240)).convert("RGB")
    noise = Image.frombytes("RGB", (64, 48), Random(5).randbytes(64 * 48 * 3))
    files = []
    for picture, said in ((shade, {"exif": exif.tobytes()}), (noise, {}), (shade.convert("L"), {})):
        out = io.BytesIO()
        picture.save(out, kind, **said)
        files.append(out.getvalue())
    return tuple(files)


@cache
def batches() -> tuple[bytes, ...]:
    """What a phone sends of a cow, of a wash-down, and of nothing new."""
    foot = {
        "foot": "LH",
        "findings": [{"lesion": "SU", "claw": "lateral", "zone": 4, "severity": 2}],
        "actions": [{"kind": "block", "claw": "medial", "block_kind": "wood"}],
    }
    entry = {"mobility_scale": "", "mobility_score": None, "belly_band_minutes": None, "crush_seconds": None,
             "note": "", "for_vet": "", "feet": [foot]}  # fmt: skip
    cow = {"uid": UID, "kind": "cow", "record": UID, "after": None, "made_at": AT, "not_before": None,
           "is_gone": False, "content": {"cow": {"id": 1}, "told_vet": "", "entry": entry}}  # fmt: skip
    envelope = {
        "phone": UID,
        "sent_at": AT,
        "seen": 0,
        "begun": {"at": AT, "checked": True},
        "writings": [cow],
    }
    return tuple(json.dumps(each).encode() for each in (envelope, {**envelope, "writings": []}))
