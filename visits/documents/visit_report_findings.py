"""What was found this visit: cows with each lesion out of the cows seen, out of the herd."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from trimops.paper.colours import Tint
from trimops.paper.drawing import Drawing, Line, Pen, Polygon, Shape, box
from trimops.paper.figures import counted
from trimops.paper.headings import section
from trimops.paper.styles import style, words
from trimops.paper.tables import Cell, Column, ruled_table
from trimops.paper.to_pdf import DrawingBlock
from visits.documents.visit_report_content import FindingCount, VisitReport

_BAR_WIDTH = 42.0
_BAR_HEIGHT = 3.2


def findings_part(report: VisitReport) -> list[Flowable]:
    """Heading, the sentence that says how many cows this rests on, and the table (if anything was found)."""
    seen = len(report.cows)
    parts: list[Flowable] = [*section("What was found"), words(basis(report), style(after=4))]
    if not seen:
        return parts
    if not report.findings:
        return [*parts, words("No lesion was seen.")]
    columns = [
        Column("Lesion seen", 58 * mm),
        Column(f"cows\nof {seen}", 20 * mm, "right"),
        Column("", (_BAR_WIDTH + 4) * mm),
        *[Column(f"{c.label}\nof {c.cows_seen}", 28 * mm, "right") for c in report.compared],
    ]
    ordered = sorted(report.findings, key=lambda finding: -finding.cows)
    return [*parts, ruled_table(columns, [_row(finding, report) for finding in ordered])]


def basis(report: VisitReport) -> str:
    """How many cows were seen out of the herd, and what that can and cannot tell."""
    seen = len(report.cows)
    if not seen:
        return "No cow was seen at this visit."
    clean = sum(1 for cow in report.cows if not any(foot.found for foot in cow.feet))
    counts = f"{counted(seen, 'cow')} seen out of a herd of {report.herd_size:,}; nothing found on {clean:,} of them."
    if report.whole_herd:
        return f"{counts} The whole herd was to be seen."
    return f"{counts} These cows were picked for a reason: their counts do not stand for the herd."


def _row(finding: FindingCount, report: VisitReport) -> list[Cell]:
    right = style(align="right")
    before = [*finding.before, *[None] * len(report.compared)][: len(report.compared)]
    return [
        words(finding.lesion),
        words(str(finding.cows), style(bold=True, align="right")),
        DrawingBlock(_bar(finding.cows / len(report.cows))),
        *[words("–" if number is None else str(number), right) for number in before],
    ]


def _bar(share: float) -> Drawing:
    """The share of the cows seen, on a line that stands for all of them."""
    filled = _BAR_WIDTH * min(1.0, share)
    shapes: tuple[Shape, ...] = (
        Line(((0, _BAR_HEIGHT / 2 + 0.4), (_BAR_WIDTH, _BAR_HEIGHT / 2 + 0.4)), Pen(Tint.RULE, 0.2)),
        Polygon(box(0, 0.6, filled, _BAR_HEIGHT), Tint.QUIET, None),
    )
    return Drawing(_BAR_WIDTH, _BAR_HEIGHT, shapes, title="share of the cows seen")
