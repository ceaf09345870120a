"""What is told of a herd without a picture: walking, blocks and re-checks, cases, figures in print, costs."""

from collections import Counter
from decimal import Decimal

from trimops.paper.days import day_plain
from trimops.paper.figures import money
from visits.documents.herd_story_content import FigureRow, FigureTable
from visits.domain.herd.against_others import AgainstPublished, Verdict
from visits.domain.herd.case_costs import CostRange, cost_range, cost_ranges
from visits.domain.herd.case_history import CaseKind
from visits.domain.herd.facts import HerdFacts
from visits.domain.herd.finding import StoryPeriod, between, figure
from visits.domain.herd.herd_story import HerdTold
from visits.domain.herd.intervals import Share
from visits.domain.herd.mobility_prevalence import MobilityPrevalence, mobility_series
from visits.domain.herd.outcomes import BlockOutcome, RecheckOutcome, block_outcomes, recheck_outcomes
from visits.selectors.herd_contents import country_of

NEWEST_SCORINGS = 4
WALKING_NOTE = (
    "Cows that walk lame: a score of 2 and over on the UK sheet, 3 and over from 1 to 5. Each sheet stands by itself; "
    "only scorings of the whole herd."
)
COST_NOTE = (
    ", times what studies say one lame cow costs, in the money and prices of each study: a range, "
    "not a bill. A lesion found at a routine trim had often not made the cow lame yet, so the upper figure is too high."
)
PRINT_NOTE = (
    "How far this herd's newest whole-herd round lies from figures in print, at 95 %. "
    "To differ from them is usual."
)


def herd_tables(facts: HerdFacts, told: HerdTold) -> tuple[FigureTable, ...]:
    """Those that have a row."""
    tables = (
        _walking(facts, told.period),
        _kept(facts, told.period),
        _cases(told),
        _printed(told),
        _costs(facts, told),
    )
    return tuple(table for table in tables if table.rows)


def _walking(facts: HerdFacts, period: StoryPeriod) -> FigureTable:
    rows = []
    for scale, series in mobility_series(facts).items():
        within = [scoring for scoring in series if scoring.day < period.end]
        rows += [_scoring(scoring, scale.label) for scoring in reversed(within[-NEWEST_SCORINGS:])]
    return FigureTable("How the herd walks", tuple(rows), WALKING_NOTE)


def _scoring(scoring: MobilityPrevalence, scale: str) -> FigureRow:
    share = ""
    if scoring.per_100 is not None and scoring.interval is not None:
        share = f", {figure(scoring.per_100)} per 100 ({between(scoring.interval)})"
    soon = "; within 7 days of a trim, when cows walk worse" if scoring.is_soon_after_trim else ""
    return FigureRow(
        what=day_plain(scoring.day),
        figure=f"{scoring.lame:,} of {scoring.scored:,}{share}",
        basis=f"{scale}; {scoring.very_lame} very lame{soon}",
    )


def _kept(facts: HerdFacts, period: StoryPeriod) -> FigureTable:
    blocks = block_outcomes(facts, period.start, period.end)
    rechecks = recheck_outcomes(facts, period.start, period.end)
    rows = []
    if sum(blocks.counts.values()):
        told = [(outcome.label, blocks.counts[outcome]) for outcome in BlockOutcome]
        rows.append(FigureRow("Blocks off by their day", _share(blocks.in_time), _listed(told)))
    if sum(rechecks.counts.values()):
        told = [(outcome.label, rechecks.counts[outcome]) for outcome in RecheckOutcome]
        rows.append(FigureRow("Re-checks by their day", _share(rechecks.in_time), _listed(told)))
    return FigureTable("Blocks and re-checks", tuple(rows), f"Those that came due {period.words}.")


def _share(share: Share) -> str:
    if share.per_100 is None or share.per_100_interval is None:
        return "none came due"
    return f"{share.count} of {share.total}, {figure(share.per_100)} % ({between(share.per_100_interval)})"


def _listed(told: list[tuple[str, int]]) -> str:
    return "; ".join(f"{count} {words}" for words, count in told if count)


def _cases(told: HerdTold) -> FigureTable:
    kinds, lesions = told.kinds_of_cases, Counter(case.lesion for case in told.cases_begun)
    rows = []
    if kinds:
        counts = [(kind.value, kinds[kind]) for kind in CaseKind]
        rows.append(FigureRow("What became of them", _listed(counts), CASES_BASIS))
        order = sorted(lesions.items(), key=lambda pair: (-pair[1], pair[0]))
        rows.append(FigureRow("Of what", _listed([(lesion.label, count) for lesion, count in order])))
    return FigureTable(
        "Cases that began", tuple(rows), f"New to the foot {told.when_begun}; each counts once."
    )


CASES_BASIS = (
    "repeated: seen again after 6 weeks, or back on the foot within a year; "
    "chronic: seen three times or more over more than 6 weeks"
)


def _printed(told: HerdTold) -> FigureTable:
    rows = tuple(_against(printed) for each in told.others.compared for printed in each.published)
    return FigureTable("Beside figures in print", rows, PRINT_NOTE)


def _against(against: AgainstPublished) -> FigureRow:
    here, printed, gap = against.here, against.published, against.difference
    source = printed.source
    words = {
        Verdict.HIGHER: f"{_points(gap.low)} to {_points(gap.high)} more per 100",
        Verdict.LOWER: f"{_points(gap.high)} to {_points(gap.low)} fewer per 100",
        Verdict.NOT_TOLD_APART: f"not told apart: {_points(gap.low)} fewer to {_points(gap.high)} more per 100",
    }[against.verdict]
    print_words = f"in print {figure(printed.per_100)} per 100"
    if printed.housing:
        print_words += f" in {printed.housing}s"
    if against.is_taken_as_exact:
        print_words += ", taken as exact"
    return FigureRow(
        what=f"Cows with {here.words}",
        figure=words,
        basis=f"here {here.cows} of {here.seen}; {print_words}",
        source=f"{source.cited}; {source.population}, {country_of(printed)} {source.years}; {source.tag}",
    )


def _points(value: float) -> str:
    return figure(abs(value))


def _costs(facts: HerdFacts, told: HerdTold) -> FigureTable:
    """From the cases of cows that walked lame, which is what the studies priced, to all cases seen."""
    lame = Counter(case.lesion for case in told.cases_when_lame)
    ranges = cost_ranges(Counter(case.lesion for case in told.cases_begun), facts.country)
    rows = tuple(_cost(every, cost_range(lame, every.study), lame.total()) for every in ranges)
    return FigureTable(
        "What the cases may have cost", rows, f"Cases new to the foot {told.when_begun}{COST_NOTE}"
    )


def _cost(every: CostRange, of_lame: CostRange | None, lame: int) -> FigureRow:
    study = every.study
    high = _whole(every.high, study.currency)
    low = f"{_whole(of_lame.low, study.currency)} to" if of_lame else "up to"
    counts = f"all {every.priced + every.averaged} cases with a price"
    if of_lame:
        counts = f"from {of_lame.priced} priced cases of cows scored lame when seen to {counts}"
    elif not lame:
        counts += "; none was seen on a cow scored lame"
    if every.unpriced:
        counts += f"; {every.unpriced} without one are left out"
    return FigureRow(
        what=f"At prices of {study.year}",
        figure=f"{low} {high}",
        basis=counts,
        source=f"{study.cited}; {study.tag}",
    )


def _whole(amount: Decimal, currency: str) -> str:
    """Rounded to tens: a figure like this bears no more."""
    return money(amount.quantize(Decimal("1E1")).quantize(Decimal(1)), currency, 0)
