"""What a curve of cows per edge says, as a sentence; or that it is too few to tell."""

from collections.abc import Sequence

from visits.domain.herd.survival_curve import Median, SurvivalCurve
from visits.domain.kit.edge_curve import EDGES_ENOUGH, is_enough, told_apart


def curve_finding(what: str, curve: SurvivalCurve) -> str:
    """ "Half of the edges from the belt were dull by 26 cows (25 to 28); 384 edges, 343 of them went dull." """
    edges = len(curve.durations)
    basis = f"{edges} {'edge' if edges == 1 else 'edges'}, {curve.events} of them went dull"
    if not edges:
        return f"Nothing is known of {what} yet."
    if not is_enough(curve):
        return f"Too few to tell of {what}: {basis}; {EDGES_ENOUGH} that went dull would do."
    median = curve.median
    if median is None:
        last = curve.steps[-1]
        return (
            f"More than half of {what} still cut at {curve.followed_until:g} cows "
            f"({100 * last.survival:.0f} of 100; {basis})."
        )
    return f"Half of {what} were dull by {median.day:g} cows{_interval(median)}; {basis}."


def best_method(medians: Sequence[tuple[str, Median]]) -> str:
    """Which way of sharpening lasts longest, said only where its interval leaves a gap to each of the others."""
    if len(medians) < 2:
        return ""
    (name, best), *others = sorted(medians, key=lambda pair: -pair[1].day)
    beaten = [other for other, median in others if told_apart(best, median)]
    if len(beaten) == len(others):
        return f"{name}: these edges last longest, by more than chance explains."
    if beaten:
        return f"{name} lasts longer than {' and '.join(beaten).lower()}; against the others it is too close to tell."
    return "Which way of sharpening lasts longest is too close to tell yet."


def _interval(median: Median) -> str:
    low = "0" if median.low is None else f"{median.low:g}"
    return f" (between {low} and {median.high:g})" if median.high is not None else f" (at least {low})"
