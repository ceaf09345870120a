"""The words of a report: its top, its end, and all of it together."""

from datetime import date
from itertools import groupby

from trimops.paper.days import clock, day_long, day_short, day_short_year
from trimops.paper.figures import counted, quantity
from visits.documents.visit_report_content import (
    BlockLine,
    Consumable,
    FarmTask,
    HygieneStep,
    VetReferral,
    VisitReport,
)
from visits.documents.visit_report_count_words import count_words
from visits.documents.visit_report_cow_words import cow_words, plain_cow_words
from visits.documents.visit_report_said import BlocksDue, Line, ReportSaid


def report_words(report: VisitReport) -> ReportSaid:
    """Everything that page and paper say."""
    return ReportSaid(
        title=report_title(report),
        mark=_mark(report),
        facts=_facts(report),
        change=_change(report),
        vet=tuple(Line(f"Cow {line.cow},", _vet_words(line)) for line in report.vet),
        blocks=_blocks(report),
        to_do=_to_do(report),
        counts=count_words(report),
        cows=cow_words(report.cows),
        plain_cows=plain_cow_words(report.cows),
        hygiene=_hygiene(report),
        used="; ".join(map(used_words, report.consumables)) or "Nothing was used up.",
        next_visit=report.next_visit or "Not booked yet.",
        signed=tuple(
            f"{s.name}, {s.role}, {day_short_year(s.at.date())}, {clock(s.at)}" for s in report.signed
        ),
        was_done=report.was_done,
        farm_to_do=report.farm_to_do,
        cautions=report.cautions,
    )


def report_title(report: VisitReport) -> str:
    """The answer first: "High Thornbeck: 30 cows seen, 2 for the vet, 3 blocks on"."""
    parts = [f"{counted(len(report.cows), 'cow')} seen"]
    if report.vet:
        parts.append(f"{len({line.cow for line in report.vet})} for the vet")
    if report.blocks:
        parts.append(f"{counted(len(report.blocks), 'block')} on")
    return f"{report.farm_name}: {', '.join(parts)}"


def _mark(report: VisitReport) -> str:
    mark = f"Visit report {report.reference}".strip()
    return mark if report.version == 1 else f"{mark}, version {report.version}"


def _facts(report: VisitReport) -> str:
    times = ""
    if report.started and report.finished:
        times = f", {clock(report.started)} to {clock(report.finished)}"
    where = ", ".join(report.farm_address)
    made = report.made_at.date()
    late = f"report made {day_short_year(made)}" if made > report.visit_day else ""
    by = f"trimmed by {' and '.join(report.trimmers)}" if report.trimmers else ""
    return " · ".join(part for part in (f"{day_long(report.visit_day)}{times}", by, where, late) if part)


def _change(report: VisitReport) -> str:
    if report.version == 1:
        return ""
    changed = report.change_note or "not said"
    return f"Version {report.version}, in place of the one before. Changed: {changed}"


def _vet_words(line: VetReferral) -> str:
    place = f"{line.foot.label}: " if line.foot else ""
    return f"{place}{line.seen}. Vet advised. {line.told or 'Not noted that the vet was told.'}"


def _blocks(report: VisitReport) -> tuple[BlocksDue, ...]:
    def due(block: BlockLine) -> tuple[date, str]:
        return block.off_by, block.who

    return tuple(
        _blocks_due(_off_words(day, report.visit_day), who, tuple(blocks), report.visit_day)
        for (day, who), blocks in groupby(sorted(report.blocks, key=due), key=due)
    )


def _blocks_due(day: str, who: str, blocks: tuple[BlockLine, ...], visit_day: date) -> BlocksDue:
    """ "By Tue 29 Dec, 3 wooden blocks:": blocks of one kind are named once, others each on its line."""
    kinds = {block.kind for block in blocks}
    kind = counted(len(blocks), kinds.pop()) if len(kinds) == 1 else ""
    lines = tuple(Line(block.cow, _block_words(block, visit_day, told=bool(kind))) for block in blocks)
    lead = ", ".join(part for part in (day, kind) if part)
    return BlocksDue(f"{lead}:" if who else lead, who, lines)


def _off_words(off_by: date, visit_day: date) -> str:
    return f"{day_short(off_by)} (overdue)" if off_by < visit_day else f"By {day_short(off_by)}"


def _block_words(block: BlockLine, visit_day: date, *, told: bool) -> str:
    """ "right hind, inner claw", with its kind where that is not `told` above it, and since when where not today."""
    since = "" if block.put_on == visit_day else f"since {day_short(block.put_on)}"
    more = ", ".join(part for part in ("" if told else block.kind, since) if part)
    return f"{block.foot.label}, {block.claw.label}{f' ({more})' if more else ''}"


def _to_do(report: VisitReport) -> tuple[Line, ...]:
    undated = date.max
    ordered = sorted(report.to_do, key=lambda task: task.by or undated)
    return tuple(Line(f"By {day_short(task.by)}:" if task.by else "", _task_words(task)) for task in ordered)


def _task_words(task: FarmTask) -> str:
    cows = f" ({'cow' if len(task.cows) == 1 else 'cows'} {', '.join(task.cows)})" if task.cows else ""
    return f"{task.words}{cows}"


def _hygiene(report: VisitReport) -> tuple[Line, ...]:
    level = [Line("", f"Hygiene {report.hygiene_level}")] if report.hygiene_level else []
    steps = [_step_words(step) for step in report.hygiene_steps] or [Line("", "No step was noted.")]
    return (*level, *steps)


def _step_words(step: HygieneStep) -> Line:
    """What was left out stands in the bold part, so that it is not hidden."""
    if not step.done:
        return Line(f"Not done: {step.words}")
    return Line("", f"Done{' ' + clock(step.at) if step.at else ''}: {step.words}")


def used_words(item: Consumable) -> str:
    """ "120 ml block glue"; things that are counted one by one need no unit: "2 wraps"."""
    unit = f" {item.unit}" if item.unit not in ("", "each") else ""
    return f"{quantity(item.quantity)}{unit} {item.name}"
