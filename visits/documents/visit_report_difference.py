"""Whether what was found differs from an earlier visit by more than chance makes it.

Method: the share of cows with a lesion, now less then, with Newcombe's interval (`visits/domain/herd/intervals.py`);
the level is raised for the number of differences looked at (Bonferroni), so that one table as a whole is wrong in at
most one of twenty. The interval is of different cows; a cow seen both times makes it wider than it need be. Nothing is
claimed where cows were picked, or where this visit is only a part of its round.
"""

from collections.abc import Iterator

from visits.documents.visit_report_content import Comparison, VisitReport
from visits.domain.herd.intervals import LEVEL, newcombe

PICKED_AGAIN = "A difference between visits may come from which cows were picked: no change is read from it."
PART_ONLY = "This visit is a part of its round: a difference may come from which cows were seen today."
BY_CHANCE = "None of these differences is larger than chance can make it."
OTHERS_BY_CHANCE = "Any other difference can be chance."

Counted = tuple[str, str, int, int, int, int]


def difference_words(report: VisitReport) -> str:
    """A sentence below the counts; empty where there is nothing to compare, or not of a kind (`basis` says so then)."""
    alike = [c for c in report.compared if c.whole_herd in (None, report.whole_herd)]
    if not alike or not report.cows or not report.findings:
        return ""
    if not report.whole_herd:
        return PICKED_AGAIN
    if report.round_note:
        return PART_ONLY
    pairs = list(_pairs(report, [c for c in alike if c.whole_herd]))
    if not pairs:
        return ""
    level = 1 - (1 - LEVEL) / len(pairs)
    real = [words for words in (_difference(pair, level) for pair in pairs) if words]
    return f"Beyond chance: {'; '.join(real)}. {OTHERS_BY_CHANCE}" if real else BY_CHANCE


def _pairs(report: VisitReport, alike: list[Comparison]) -> Iterator[Counted]:
    """Lesion, visit compared, and the cows with it of those seen, now and then."""
    seen = len(report.cows)
    for finding in report.findings:
        for compared, then in zip(report.compared, finding.before, strict=False):
            is_sound = then is not None and 0 < compared.cows_seen >= then and finding.cows <= seen
            if compared in alike and then is not None and is_sound:
                yield finding.lesion, compared.label, finding.cows, seen, then, compared.cows_seen


def _difference(pair: Counted, level: float) -> str:
    lesion, label, *numbers = pair
    now, seen, then, seen_then = numbers
    interval = newcombe(now, seen, then, seen_then, level)
    if interval.holds(0):
        return ""
    return f"{lesion}, {'fewer' if interval.high < 0 else 'more'} than {label}"
