"""The end of the report: what was used, hygiene, next visit, words at the sign-off, signatures, cautions."""

from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer

from trimops.paper.colours import Tint
from trimops.paper.days import clock, day_short_year
from trimops.paper.figures import quantity
from trimops.paper.headings import heading, section
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.side_by_side import side_by_side
from trimops.paper.styles import style, words
from visits.documents.visit_report_content import Consumable, HygieneStep, VisitReport


def end_part(report: VisitReport) -> list[Flowable]:
    """Used and washed beside next visit and signatures, cautions over the full width."""
    left = [*_hygiene(report), *_used(report)]
    right = [*_next(report), *_signed(report)]
    beside = side_by_side([left, right], TEXT_WIDTH)
    return [Spacer(0, 8), *beside, *_told(report), *_cautions(report)]


def _hygiene(report: VisitReport) -> list[Flowable]:
    level = f"Hygiene {report.hygiene_level}" if report.hygiene_level else ""
    lines = [words(_step_words(step), style(bold=not step.done, after=2)) for step in report.hygiene_steps]
    return [
        heading("Washing and disinfecting"),
        *([words(level, style(tint=Tint.QUIET, after=2))] if level else []),
        *(lines or [words("No step was noted.")]),
    ]


def _step_words(step: HygieneStep) -> str:
    if not step.done:
        return f"Not done: {step.words}"
    return f"Done{' ' + clock(step.at) if step.at else ''}: {step.words}"


def _used(report: VisitReport) -> list[Flowable]:
    if not report.consumables:
        return [heading("Used"), words("Nothing was used up.")]
    text = "; ".join(_used_words(item) for item in report.consumables)
    return [heading("Used"), words(text)]


def _used_words(item: Consumable) -> str:
    unit = f" {item.unit}" if item.unit else ""
    return f"{quantity(item.quantity)}{unit} {item.name}"


def _next(report: VisitReport) -> list[Flowable]:
    return [heading("Next visit"), words(report.next_visit or "Not booked yet.")]


def _signed(report: VisitReport) -> list[Flowable]:
    if not report.signed:
        return [heading("Signed"), words("Not signed."), Spacer(0, 20)]
    lines: list[Flowable] = [
        words(f"{s.name}, {s.role}, {day_short_year(s.at.date())}, {clock(s.at)}", style(after=2))
        for s in report.signed
    ]
    return [heading("Signed"), *lines]


def _told(report: VisitReport) -> list[Flowable]:
    """The trimmer's own words, as they were read out to whoever received them."""
    told = (("What was done", report.was_done), ("What is yours to do", report.farm_to_do))
    lines: list[Flowable] = []
    for lead, said in told:
        if said:
            first, *rest = [words(line, style(after=2)) for line in said]
            lines += [KeepTogether([words(lead, style(bold=True, before=3)), first]), *rest]
    return [*section("Told at the end of the visit", 60), *lines] if lines else []


def _cautions(report: VisitReport) -> list[Flowable]:
    lines: list[Paragraph] = [words(text, style(8.5, after=2)) for text in report.cautions]
    return [*section("Please mind", 60), *lines] if lines else []
