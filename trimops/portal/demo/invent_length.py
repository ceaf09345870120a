"""How long a visit really took, cow by cow. Its causes are drawn here and told to nobody.

Neither the planning figures nor what is learned from the history see them: a yard's gates and wait, how its cows flow,
whether somebody helps that day, the weather, trouble with the crush, hard horn, a trimmer growing tired. The minutes
are not those of the planning figures either: they are put together from feet, lesions and blocks.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from trimops.portal.demo.chances import happens, swing
from trimops.portal.demo.demo_files import FarmSketch, HiddenLength
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import CowEntry, FootEntry
from visits.domain.visit_length import FarmSetup, LengthFigures, expected_length

CUTS = (ActionKind.LENGTH, ActionKind.BALANCE, ActionKind.MODEL, ActionKind.RELIEF)


@dataclass(frozen=True)
class YardWays:
    """A farm's hidden ways: factors on the wait at the gate, the minutes between cows, and trimming; its help."""

    wait: float
    flow: float
    helper: float
    horn: float


@dataclass(frozen=True)
class TodayLuck:
    """Of one van's day: the weather and how quick its trimmer's hands are, as factors on the minutes."""

    weather: float
    hands: float


def yard_ways(luck: Random, hidden: HiddenLength, horn: float) -> YardWays:
    """Drawn once for each farm."""
    return YardWays(
        swing(luck, hidden.wait_farm_spread),
        swing(luck, hidden.flow_farm_spread),
        luck.betavariate(4 * hidden.helper_there, 4 * (1 - hidden.helper_there)),
        horn,
    )


def expected_minutes(sketch: FarmSketch, heads: int, corrective: int) -> int:
    """What the planning figures say, by the defaults of the domain."""
    setup = FarmSetup(
        crush_on_site=sketch.crush == "on_site",
        has_hard_standing=sketch.hard_standing,
        has_water=sketch.water,
        has_power=sketch.power != "none",
        has_light=sketch.light,
        hygiene_level=sketch.hygiene,
    )
    return expected_length(
        LengthFigures(), setup, head_count=heads, corrective_count=min(corrective, heads)
    ).minutes


def cows_done_at(
    luck: Random,
    hidden: HiddenLength,
    yard: tuple[FarmSketch, YardWays],
    today: TodayLuck,
    cows: Sequence[CowEntry],
) -> tuple[list[float], float]:
    """Minutes after the start at which each cow was let go, and at which the visit was over."""
    sketch, ways = yard
    weather = today.weather ** (hidden.open_yard if sketch.shelter == "open" else 1.0)
    helped = happens(luck, ways.helper)
    clock = _before_first_cow(luck, hidden, sketch, ways) * weather
    gap = hidden.cow_gap * ways.flow * (1.0 if helped else hidden.gap_without_help)
    let_go = []
    for number, cow in enumerate(cows):
        tired = 1 + hidden.tired_per_cow * max(0, number - hidden.fresh_cows)
        work = _cow_minutes(hidden, cow) * ways.horn * today.hands * tired * swing(luck, hidden.cow_spread)
        clock += (work + gap * swing(luck, hidden.cow_spread)) * weather
        let_go.append(clock)
    if happens(luck, hidden.kit_trouble):
        clock += luck.gammavariate(2, hidden.kit_trouble_minutes / 2)
    after = _after_last_cow(hidden, sketch) * swing(luck, hidden.odd_jobs_spread)
    return let_go, round(clock + after * (1.0 if helped else 1.2), 1)


def drive_really(luck: Random, hidden: HiddenLength, minutes: float) -> float:
    """A drive as the road, the weather and the tractor in front leave it."""
    return minutes * swing(luck, hidden.traffic_spread)


def _before_first_cow(luck: Random, hidden: HiddenLength, sketch: FarmSketch, ways: YardWays) -> float:
    setting_up = hidden.set_up_on_site if sketch.crush == "on_site" else hidden.set_up_brought
    setting_up += hidden.no_hard_standing * (not sketch.hard_standing)
    setting_up += hidden.no_power * (sketch.power == "none") + hidden.no_light * (not sketch.light)
    wait = luck.gammavariate(2, hidden.wait_minutes * ways.wait / 2)
    return setting_up * swing(luck, hidden.odd_jobs_spread) + wait


def _after_last_cow(hidden: HiddenLength, sketch: FarmSketch) -> float:
    wash = hidden.wash_down[sketch.hygiene] * (1.0 if sketch.water else hidden.wash_without_water)
    return hidden.pack_up + wash


def _cow_minutes(hidden: HiddenLength, cow: CowEntry) -> float:
    return sum(_foot_minutes(hidden, foot) for foot in cow.feet)


def _foot_minutes(hidden: HiddenLength, foot: FootEntry) -> float:
    minutes = hidden.foot_cut if any(foot.did(kind) for kind in CUTS) else hidden.foot_looked_at
    minutes += sum(hidden.lesion_by_severity[finding.severity - 1] for finding in foot.findings)
    minutes += hidden.block * len(list(foot.blocks()))
    return minutes + hidden.wrap * foot.did(ActionKind.WRAP)
