"""The words of the counts: cows with each lesion, in 100 and out of the cows seen, beside earlier visits."""

from trimops.paper.figures import counted
from visits.documents.visit_report_content import Comparison, FindingCount, VisitReport
from visits.documents.visit_report_difference import difference_words
from visits.documents.visit_report_said import CountHead, CountRow, Counts

# Below it one cow more or less moves the share by over 5 in 100 (common practice, no source).
LEAST_FOR_SHARE = 20
PICKED = "These cows were picked for a reason: their counts do not stand for the herd."
NOT_ALIKE = "Counts of picked cows and of a whole herd are not alike: no change can be read from them."


def count_words(report: VisitReport) -> Counts:
    """Most frequent first; what was seen at an earlier visit only comes last, with a nought."""
    seen = len(report.cows)
    if not seen:
        return Counts(basis(report), (), (), "")
    heads = (CountHead("this visit", counted(seen, "cow")), *map(_head, report.compared))
    ordered = sorted(report.findings, key=lambda finding: -finding.cows)
    rows = tuple(_row(finding, report) for finding in ordered)
    return Counts(basis(report), heads, rows, "" if rows else "No lesion was seen.", difference_words(report))


def cows_of(number: int, seen: int) -> str:
    """ "10 in 100 (3 of 30)"; of few cows only "3 of 12", which bear no share."""
    if seen < LEAST_FOR_SHARE:
        return f"{number} of {seen}"
    in_100 = 100 * number / seen
    return f"{'under 1' if 0 < in_100 < 1 else f'{in_100:.0f}'} in 100 ({number} of {seen})"


def basis(report: VisitReport) -> str:
    """How many cows were seen out of the herd, and what that can and cannot tell."""
    seen = len(report.cows)
    if not seen:
        return "No cow was seen at this visit."
    clean = sum(1 for cow in report.cows if not any(foot.found or foot.vet for foot in cow.feet))
    herd = f" out of a herd of {report.herd_size:,}" if report.herd_size else ", herd size not noted"
    counts = f"{counted(seen, 'cow')} seen{herd}; nothing found on {clean:,} of them."
    kind = "The whole herd was to be seen." if report.whole_herd else PICKED
    mixed = any(c.whole_herd not in (None, report.whole_herd) for c in report.compared)
    parts = [counts, report.round_note, kind, NOT_ALIKE if mixed else ""]
    return " ".join(part for part in parts if part)


def _head(compared: Comparison) -> CountHead:
    kind = {True: ", whole herd", False: ", picked", None: ""}[compared.whole_herd]
    return CountHead(compared.label, f"{counted(compared.cows_seen, 'cow')}{kind}")


def _row(finding: FindingCount, report: VisitReport) -> CountRow:
    before = [*finding.before, *[None] * len(report.compared)][: len(report.compared)]
    told = tuple(
        "not known" if number is None else cows_of(number, compared.cows_seen)
        for number, compared in zip(before, report.compared, strict=True)
    )
    lesion = finding.lesion[:1].upper() + finding.lesion[1:]
    return CountRow(lesion, cows_of(finding.cows, len(report.cows)), told)
