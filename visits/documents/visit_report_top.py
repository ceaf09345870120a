"""The top of the report, for one look: for the vet, blocks and their dates, what the farmer must do."""

from datetime import date
from itertools import groupby

from reportlab.platypus import Flowable, Paragraph, Spacer

from trimops.paper.colours import Meaning, Tint
from trimops.paper.days import clock, day_long, day_short
from trimops.paper.figures import counted
from trimops.paper.headings import SignedHeading
from trimops.paper.letterhead import letterhead_block
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.side_by_side import side_by_side
from trimops.paper.styles import TEXT, TITLE, style, words
from trimops.paper.typefaces import BOLD
from trimops.paper.wording import markup
from visits.documents.visit_report_content import BlockLine, FarmTask, VetReferral, VisitReport


def report_title(report: VisitReport) -> str:
    """The answer first: "High Thornbeck: 30 cows seen, 2 for the vet, 3 blocks on"."""
    parts = [f"{counted(len(report.cows), 'cow')} seen"]
    if report.vet:
        parts.append(f"{len({line.cow for line in report.vet})} for the vet")
    if report.blocks:
        parts.append(f"{counted(len(report.blocks), 'block')} on")
    return f"{report.farm_name}: {', '.join(parts)}"


def report_top(report: VisitReport) -> list[Flowable]:
    """Letterhead, title, the facts of the visit, and the three columns."""
    mark = f"Visit report {report.reference}".strip()
    return [
        letterhead_block(
            report.letterhead, mark if report.version == 1 else f"{mark}, version {report.version}"
        ),
        words(report_title(report), style(TITLE, bold=True, after=3)),
        words(_facts(report), style(tint=Tint.QUIET, after=4)),
        *_change(report),
        Spacer(0, 6),
        *side_by_side([_vet(report), _blocks(report), _to_do(report)], TEXT_WIDTH),
    ]


def _facts(report: VisitReport) -> str:
    times = ""
    if report.started and report.finished:
        times = f", {clock(report.started)} to {clock(report.finished)}"
    where = ", ".join(report.farm_address)
    by = f"trimmed by {' and '.join(report.trimmers)}" if report.trimmers else ""
    return " · ".join(part for part in (f"{day_long(report.visit_day)}{times}", by, where) if part)


def _change(report: VisitReport) -> list[Flowable]:
    if report.version == 1:
        return []
    text = (
        f"Version {report.version}, in place of the one before. Changed: {report.change_note or 'not said'}"
    )
    return [words(text, style(bold=True))]


def _vet(report: VisitReport) -> list[Flowable]:
    lines = [_item(f"Cow {line.cow},", _vet_words(line)) for line in report.vet]
    return [
        SignedHeading("For the vet", Meaning.URGENT),
        *(lines or [_nothing("No cow for the vet this time.")]),
    ]


def _vet_words(line: VetReferral) -> str:
    told = f" {line.told}" if line.told else ""
    place = f"{line.foot.label}: " if line.foot else ""
    return f"{place}{line.seen}. Vet advised.{told}"


def _blocks(report: VisitReport) -> list[Flowable]:
    lines: list[Flowable] = []
    for day, blocks in groupby(sorted(report.blocks, key=lambda b: b.off_by), key=lambda b: b.off_by):
        lines.append(_item(_off_words(day, report.visit_day), ""))
        lines += [_item(f"{block.cow}", _block_words(block, report.visit_day), before=0) for block in blocks]
    return [SignedHeading("Blocks to come off", Meaning.DUE), *(lines or [_nothing("No block is on.")])]


def _off_words(off_by: date, visit_day: date) -> str:
    return f"{day_short(off_by)} (overdue)" if off_by < visit_day else f"By {day_short(off_by)}"


def _block_words(block: BlockLine, visit_day: date) -> str:
    since = "" if block.put_on == visit_day else f", on since {day_short(block.put_on)}"
    return f"{block.foot.label}, {block.claw.label} ({block.kind}{since})"


def _to_do(report: VisitReport) -> list[Flowable]:
    undated = date.max
    ordered = sorted(report.to_do, key=lambda task: task.by or undated)
    lines = [_item(f"By {day_short(task.by)}:" if task.by else "", _task_words(task)) for task in ordered]
    return [SignedHeading("For you to do", Meaning.PLANNED), *(lines or [_nothing("Nothing this time.")])]


def _task_words(task: FarmTask) -> str:
    cows = f" ({'cow' if len(task.cows) == 1 else 'cows'} {', '.join(task.cows)})" if task.cows else ""
    return f"{task.words}{cows}"


def _item(lead: str, text: str, before: float = 3) -> Paragraph:
    bold = f'<font name="{BOLD}">{markup(lead, BOLD)}</font> ' if lead else ""
    return Paragraph(bold + markup(text), style(TEXT, before=before))


def _nothing(text: str) -> Paragraph:
    return words(text, style(TEXT, tint=Tint.QUIET, before=3))
