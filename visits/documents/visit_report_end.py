"""The end of the report: what was used, hygiene, next visit, words at the sign-off, signatures, cautions."""

from collections.abc import Iterable

from reportlab.platypus import Flowable, KeepTogether, Spacer

from trimops.paper.headings import heading
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.side_by_side import side_by_side
from trimops.paper.styles import style, words
from visits.documents.visit_report_said import ReportSaid
from visits.documents.visit_report_sizes import Sizes


def end_part(said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    """Next visit beside signatures, washing beside what was used; below them what was told at the sign-off, cautions.
    A page may end between any two of them, and between the lines of the last ones."""
    text = style(sizes.read)
    coming = [heading("Next visit"), words(said.next_visit, text)]
    used = [heading("Used"), words(said.used, text)]
    return [
        Spacer(0, 4),
        *side_by_side([coming, _signed(said, sizes)], TEXT_WIDTH),
        Spacer(0, 5),
        *side_by_side([_hygiene(said, sizes), used], TEXT_WIDTH),
        *_told(said, sizes),
        *_kept("Please mind", said.cautions, sizes),
    ]


def _hygiene(said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    lines = [
        words(line.lead or line.text, style(sizes.read, bold=bool(line.lead), after=2))
        for line in said.hygiene
    ]
    return [heading("Washing and disinfecting"), *lines]


def _signed(said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    if not said.signed:
        return [heading("Signed"), words("Not signed.", style(sizes.read))]
    return [heading("Signed"), *(words(line, style(sizes.read, after=2)) for line in said.signed)]


def _told(said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    """The trimmer's own words, as they were read out to whoever received them."""
    told = (("What was done", said.was_done), ("What is yours to do", said.farm_to_do))
    lines: list[Flowable] = []
    for lead, spoken in told:
        if spoken:
            first, *rest = [words(line, style(sizes.read, after=2)) for line in spoken]
            title = [] if lines else [heading("Told at the end of the visit")]
            lines += [
                KeepTogether([*title, words(lead, style(sizes.read, bold=True, before=3)), first]),
                *rest,
            ]
    return lines


def _kept(title: str, lines: Iterable[str], sizes: Sizes) -> list[Flowable]:
    """A heading on one page with its first line; nothing where there is no line."""
    told: list[Flowable] = [words(line, style(sizes.read, after=2)) for line in lines]
    return [KeepTogether([heading(title), told[0]]), *told[1:]] if told else []
