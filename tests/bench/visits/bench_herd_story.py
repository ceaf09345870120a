"""How often the herd page claims a change on herds where nothing changes, and on herds where something does.

The demo's generator draws the herds: cows that differ, seasons, rounds that come early or late, cows that leave. It
knows nothing of the figures. On the steady ones no part changes, so every told change of the herd's own rate or of its
new cases is false. The bar: at most one story in ten (two readings, stated at about 1 and 5 of 100).
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta

from trimops.portal.demo.demo_files import FarmSketch, farm_sketches, rates
from trimops.portal.demo.demo_people import cast
from trimops.portal.demo.invent_history import HistoryMaker, Span
from trimops.portal.demo.past import Past
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import FootEntry
from visits.domain.herd.facts import CowLife, CowSeen, FootSeen, HerdFacts, LesionSeen
from visits.domain.herd.finding import FindingKind, year_up_to
from visits.domain.herd.herd_story import HerdTold, herd_told
from visits.domain.herd.story_others import OtherHerds

TODAY = date(2026, 11, 30)
MONTHS = 40
SEEDS = range(200, 204)
CHANGES = (FindingKind.BETTER, FindingKind.WORSE)
MOST_FALSE = 0.1
TREATING = (ActionKind.RELIEF, ActionKind.LOOSE_HORN, ActionKind.BLOCK, ActionKind.WRAP, ActionKind.DRESSING)


def stories(seeds: range, months: int, later: float) -> Iterator[HerdTold]:
    """What is told of the demo's whole-herd farms, each drawn anew for every seed."""
    sketches = [replace(sketch, later=later) for sketch in farm_sketches() if sketch.whole_herd]
    first = TODAY - timedelta(days=round(months * 365.25 / 12))
    for seed in seeds:
        maker = HistoryMaker(seed, rates(), sketches, cast().vans, Span(first, TODAY, TODAY))
        for day in maker.days():
            maker.work(day)
        for farm, sketch in enumerate(sketches):
            yield herd_told(facts_of(maker.past, farm, sketch, first), year_up_to(TODAY), OtherHerds())


def facts_of(past: Past, farm: int, sketch: FarmSketch, first: date) -> HerdFacts:
    """The drawn history of one farm as facts."""
    lives = [
        CowLife(cow, str(cow), past.came.get((farm, cow), first), past.left.get((farm, cow)))
        for cow in range(past.herds[farm])
    ]
    seen = [
        CowSeen(cow.cow, visit.start.date(), number, visit.reason, tuple(map(_foot, cow.entry.feet)))
        for number, visit in enumerate(past.visits)
        if visit.farm == farm
        for cow in visit.cows
    ]
    seen.sort(key=lambda look: look.day)
    return HerdFacts(TODAY, tuple(lives), tuple(seen), herd_size=sketch.herd)


def _foot(foot: FootEntry) -> FootSeen:
    lesions = tuple(LesionSeen(f.lesion, f.claw, f.zone, f.severity, f.dd_stage) for f in foot.findings)
    treated = any(action.kind in TREATING for action in foot.actions)
    return FootSeen(foot.foot, lesions, treated)


def counted(told: Iterator[HerdTold]) -> Counter[str]:
    counts: Counter[str] = Counter()
    for story in told:
        kinds = {"rate": story.trend.finding.kind, "new cases": story.kinds.finding.kind}
        counts["herds"] += 1
        counts.update(f"{what} {kind.value}" for what, kind in kinds.items() if kind in CHANGES)
        counts["rate flagged at any time"] += bool(story.trend.chart.flags)
        counts["any change"] += any(kind in CHANGES for kind in kinds.values())
        counts["groups told apart"] += story.groups.finding.kind is FindingKind.PLAIN
    return counts


def main() -> None:
    steady = counted(stories(SEEDS, MONTHS, later=1))
    print(f"steady herds: {dict(steady)}")
    halved = counted(stories(SEEDS[:1], MONTHS, later=0.5))
    print(f"lesions halved in the second half: {dict(halved)}")
    share = steady["any change"] / steady["herds"]
    print(
        f"stories of steady herds that claim a change: {100 * share:.1f} of 100 (bar {100 * MOST_FALSE:.0f})"
    )
    if share > MOST_FALSE:
        raise AssertionError("stories of steady herds claim a change too often")
