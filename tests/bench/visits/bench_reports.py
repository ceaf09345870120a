"""A hundred visit reports of thirty cows: pages a second, and how that stands to bare tables of like size.

A bare table is what reportlab draws at the least: the same number of pages and rows, the same two faces embedded, plain
strings in cells, thin rules. Processor time is counted, not the clock on the wall, so that other work on the machine
does not show. The reports differ in numbers, places, lesions and names, as a hundred visits do.
"""

import time
from collections.abc import Callable
from dataclasses import replace
from io import BytesIO

from pypdf import PdfReader
from reportlab.lib.pagesizes import A4
from reportlab.platypus import PageBreak, SimpleDocTemplate, Table

from tests.visits.documents.made_reports import made_report
from trimops.paper.typefaces import BODY, BOLD, register_typefaces
from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import CowLine, VisitReport
from visits.domain.feet import ZONE_NAMES, Foot
from visits.domain.lesions import LESIONS

REPORTS, COWS = 100, 30
MOST_TIMES = 2.0
# Of a report of thirty cows: rows of its two tables and lines beside them, on each of its pages.
ROWS_A_PAGE, COLUMNS = 28, 6


def reports(count: int) -> list[VisitReport]:
    """Each with other cows, of which two in five have something."""
    lesions = list(LESIONS.values())
    made = []
    for number in range(count):
        report = made_report(COWS)
        cows = tuple(
            _another(cow, place, number, lesions[(number + place) % len(lesions)].name)
            for place, cow in enumerate(report.cows)
        )
        made.append(replace(report, cows=cows, farm_name=f"Farm number {number}", reference=f"no. {number}"))
    return made


def _another(cow: CowLine, place: int, number: int, lesion: str) -> CowLine:
    """The same picture with another lesion at another place of another foot."""
    zone, foot = (place + number) % len(ZONE_NAMES), list(Foot)[(place + number) % len(Foot)]
    feet = tuple(
        replace(
            line,
            foot=foot,
            found=tuple(
                replace(found, lesion=lesion, zone=zone, place=ZONE_NAMES[zone]) for found in line.found
            ),
        )
        for line in cow.feet
    )
    return replace(cow, number=str(100 + (37 * number + place) % 900), feet=feet)


def bare_tables(pages: int, number: int) -> bytes:
    """So many pages with a table each."""
    register_typefaces()
    out = BytesIO()
    story: list[object] = []
    for page in range(pages):
        rows = [
            [f"cell {number} {page} {row} {column}" for column in range(COLUMNS)]
            for row in range(ROWS_A_PAGE)
        ]
        style = [
            ("FONT", (0, 0), (-1, -1), BODY, 9),
            ("FONT", (0, 0), (0, -1), BOLD, 9),
            ("LINEBELOW", (0, 0), (-1, -1), 0.5, "#b9b5ab"),
        ]
        story += [Table(rows, style=style, repeatRows=1), PageBreak()]
    SimpleDocTemplate(out, pagesize=A4, invariant=1, initialFontName=BODY).build(story[:-1])
    return out.getvalue()


def seconds_of(draw: Callable[[], object]) -> float:
    """Processor seconds of this process."""
    began = time.process_time()
    draw()
    return time.process_time() - began


def measure(count: int) -> tuple[int, float, float]:
    """Pages drawn, and the seconds for them as reports and as bare tables, in turns: both see the same machine."""
    made = reports(count)
    pages, own, bare = 0, 0.0, 0.0
    for number, report in enumerate(made):
        drawn: list[bytes] = []
        own += seconds_of(lambda report=report, drawn=drawn: drawn.append(visit_report(report)))
        here = len(PdfReader(BytesIO(drawn[0])).pages)
        bare += seconds_of(lambda here=here, number=number: bare_tables(here, number))
        pages += here
    return pages, own, bare


def main(count: int = REPORTS) -> None:
    visit_report(made_report(COWS))
    bare_tables(2, 0)
    pages, own, bare = measure(count)
    print(
        f"  {count} reports of {COWS} cows, {pages} pages: {own:.2f} s of processor, {pages / own:.0f} pages a second"
    )
    print(f"  as many pages of bare tables: {bare:.2f} s, {pages / bare:.0f} pages a second")
    print(f"  ratio {own / bare:.2f} (bar: at most {MOST_TIMES:.0f})")
    assert own <= MOST_TIMES * bare


if __name__ == "__main__":
    main()
