"""The cows one by one: those with something to tell in a table with soles drawn, the others named together."""

from collections.abc import Iterable

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph

from trimops.paper.colours import Tint
from trimops.paper.days import day_short
from trimops.paper.headings import section
from trimops.paper.styles import SMALL, style, words
from trimops.paper.tables import Cell, Column, ruled_table
from trimops.paper.to_pdf import DrawingBlock
from trimops.paper.typefaces import BOLD
from trimops.paper.wording import markup
from visits.documents.sole_drawing import SoleMark, SoleView, small_sole_drawing
from visits.documents.visit_report_content import CowLine, FootLine, Found, VisitReport
from visits.domain.feet import Claw

_TEXT = 9.0
_COLUMNS = (
    Column("Cow", 18 * mm),
    Column("Foot", 19 * mm),
    Column("Sole", 14 * mm),
    Column("Lesion seen", 64 * mm),
    Column("Done", 42 * mm),
    Column("Look again", 23 * mm),
)
_SEVERITY = {1: "slight", 2: "clear", 3: "severe"}


def cows_part(report: VisitReport) -> list[Flowable]:
    """The table of cows with something to tell, how to read its drawings, and the cows with nothing to tell."""
    telling = [cow for cow in report.cows if not cow.is_plain]
    parts: list[Flowable] = []
    if telling:
        rows, groups = _rows(telling)
        parts += [*section("Cow by cow"), ruled_table(_COLUMNS, rows, groups=groups), _reading_aid()]
    return parts + _plain(cow for cow in report.cows if cow.is_plain)


def _reading_aid() -> Paragraph:
    text = (
        "Soles are seen from below, toes up; O stands at the outer claw. Dot: lesion seen. Red diamond: vet advised. "
        "Hatched: block. Numbers in brackets: zone of the claw, ILC map. Severity: slight, clear or severe."
    )
    return words(text, style(SMALL, tint=Tint.QUIET, before=4))


def _rows(cows: Iterable[CowLine]) -> tuple[list[list[Cell]], list[tuple[int, int]]]:
    """Rows, one to a foot, and the (first, last) row of each cow."""
    rows: list[list[Cell]] = []
    groups: list[tuple[int, int]] = []
    for cow in cows:
        first = len(rows)
        feet = [foot for foot in cow.feet if foot.found or foot.block_on or foot.recheck_on or foot.done]
        rows += [_foot_row(foot) for foot in feet]
        if cow.note or not feet:
            rows.append(["", "", "", words(cow.note or cow.work, style(_TEXT)), "", ""])
        rows[first][0] = words(cow.number, style(10.5 if len(cow.number) <= 6 else 8.5, bold=True))
        groups.append((first, len(rows) - 1))
    return rows, groups


def _foot_row(foot: FootLine) -> list[Cell]:
    marks = tuple(SoleMark(found.claw, found.zone, found.for_vet) for found in foot.found)
    sole = DrawingBlock(small_sole_drawing(SoleView(foot.foot, marks, foot.block_on), 10.5))
    seen = [Paragraph(_found_markup(found), style(_TEXT)) for found in foot.found]
    again = words(day_short(foot.recheck_on), style(_TEXT, bold=True)) if foot.recheck_on else ""
    return [
        "",
        words(foot.foot.label, style(_TEXT)),
        sole,
        seen or "",
        words(", ".join(foot.done), style(_TEXT)),
        again,
    ]


def _found_markup(found: Found) -> str:
    """ "Sole ulcer, clear: outer claw, where sole meets heel (4). Vet advised" """
    severity = f", {_SEVERITY[found.severity]}" if found.severity in _SEVERITY else ""
    claw = "" if found.claw is Claw.SKIN and found.place else found.claw.label
    place = ", ".join(part for part in (claw, found.place) if part)
    zone = "" if found.zone is None else f" ({found.zone})"
    vet = f'. <font name="{BOLD}">Vet advised</font>' if found.for_vet else ""
    lesion = f'<font name="{BOLD}">{markup(found.lesion, BOLD)}</font>'
    return f"{lesion}{severity}: {markup(place + zone)}{vet}"


def _plain(cows: Iterable[CowLine]) -> list[Flowable]:
    by_work: dict[str, list[str]] = {}
    for cow in cows:
        by_work.setdefault(cow.work, []).append(cow.number)
    if not by_work:
        return []
    parts: list[Flowable] = section("Nothing found", 40)
    for work, numbers in by_work.items():
        parts.append(words(f"{work.capitalize()} ({len(numbers)}): {', '.join(numbers)}", style(after=2)))
    return parts
