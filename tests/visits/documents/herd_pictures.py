"""Contents of the six herd pictures for the tests: usual ones, and those at the edge."""

from datetime import date

from visits.documents.herd_story_content import (
    AgainstOthers,
    ChangeSeen,
    Contest,
    CowGroup,
    FreeStep,
    Kinds,
    KindYear,
    OverTime,
    Party,
    Reading,
    SetAgainst,
    SoleHeat,
    Split,
    TimePoint,
    TimeToNext,
    WhichCows,
    ZoneCount,
)
from visits.domain.feet import SKIN_ZONES, ZONE_NAMES, Claw, Foot

UNIT = "cows with any lesion, per 100 seen"
LONG = "cows with digital dermatitis seen on any foot at a trim of the whole herd, per 100 cows seen there"


def point(day: date, value: float, *, whole_herd: bool = True, reach: float = 9) -> TimePoint:
    return TimePoint(day, Reading(value, max(0, value - reach), min(100, value + reach)), whole_herd, 90)


def group(label: str, count: int, seen: int) -> CowGroup:
    share = 100 * count / seen if seen else 0.0
    reading = Reading(share, max(0, share - 15), min(100, share + 15)) if seen else None
    return CowGroup(label, reading, count, seen)


OVER = OverTime(
    UNIT,
    (
        point(date(2024, 3, 1), 40),
        point(date(2024, 6, 1), 64, whole_herd=False),
        point(date(2024, 9, 1), 38),
        point(date(2025, 9, 2), 51),
        point(date(2026, 3, 3), 53),
    ),
    (ChangeSeen(date(2025, 9, 2), rises=True),),
)
OVER_ONE = OverTime(UNIT, (point(date(2026, 3, 3), 100),))
OVER_NONE_FOUND = OverTime(UNIT, (point(date(2026, 3, 3), 0), point(date(2026, 9, 3), 0)))
OVER_FORTY = OverTime(
    LONG,
    tuple(
        point(date(2016 + i // 4, 1 + 3 * (i % 4), 5), 20 + (i * 7) % 13, whole_herd=i % 3 != 2)
        for i in range(40)
    ),
    (ChangeSeen(date(2019, 7, 5), rises=False), ChangeSeen(date(2024, 4, 5), rises=True)),
)

KINDS = Kinds(
    "new cases per 100 cow-years",
    (
        KindYear("2024", Reading(31, 22, 42), Reading(22, 15, 32)),
        KindYear("2025", Reading(24, 17, 33), None),
        KindYear("2026 so far", Reading(12, 7, 19), Reading(26, 18, 36)),
    ),
)
KINDS_ONE = Kinds("new cases per 100 cow-years", (KindYear("2026", Reading(0, 0, 12.3), None),))
KINDS_TEN = Kinds(
    "new cases per 100 cow-years",
    tuple(
        KindYear(str(2017 + i), Reading(30 - 2 * i, 22 - 2 * i, 42 - 2 * i), Reading(9 + i, 5, 16 + i))
        for i in range(10)
    ),
)

HEAT = SoleHeat(
    (
        ZoneCount(Foot.LEFT_HIND, Claw.LATERAL, 4, 14),
        ZoneCount(Foot.RIGHT_HIND, Claw.LATERAL, 4, 20),
        ZoneCount(Foot.RIGHT_HIND, Claw.MEDIAL, 12, 1),
        ZoneCount(Foot.RIGHT_HIND, Claw.SKIN, 10, 11),
        ZoneCount(Foot.LEFT_FORE, Claw.MEDIAL, 1, 6),
        ZoneCount(Foot.LEFT_HIND, Claw.LATERAL, None, 12),
    )
)
HEAT_HIND = SoleHeat((ZoneCount(Foot.RIGHT_HIND, Claw.LATERAL, 4, 1),))
HEAT_FULL = SoleHeat(
    tuple(
        ZoneCount(foot, claw, zone, 100 + 50 * zone)
        for foot in Foot
        for claw in (Claw.LATERAL, Claw.MEDIAL)
        for zone in ZONE_NAMES
        if zone not in SKIN_ZONES or claw is Claw.MEDIAL
    )
)

WHICH = WhichCows(
    UNIT,
    (
        Split("Lactation", (group("first", 6, 31), group("second", 9, 28), group("fourth and more", 13, 19))),
        Split("Days in milk", (group("dry", 0, 15), group("over 200", 24, 24))),
        Split("Season", (group("winter", 12, 30), group("summer", 0, 0))),
    ),
    Reading(39, 31, 49),
)
WHICH_LONG = WhichCows(
    LONG,
    (Split("Lactation", (group("heifers bought in from elsewhere", 1236, 4031), group("second", 0, 28))),),
)

NEXT = TimeToNext(
    (
        FreeStep(0, Reading(100, 100, 100)),
        FreeStep(28, Reading(84, 73, 91)),
        FreeStep(93, Reading(66, 53, 77)),
        FreeStep(210, Reading(48, 34, 60)),
    ),
    ((0, 64), (100, 41), (200, 22), (300, 9)),
    365,
    210,
)
NEXT_FEW = TimeToNext((FreeStep(0, Reading(100, 100, 100)),), ((0, 2), (20, 1)), 30)
NEXT_MANY = TimeToNext(NEXT.steps, tuple((day, 2000 - day) for day in range(0, 1200, 50)), 1200, 1150)

AGAINST = AgainstOthers(
    "cows with it, per 100 seen at whole-herd trims",
    (
        Contest(
            "Sole ulcer",
            (
                SetAgainst("this herd, 2026", Party.OWN, Reading(12, 7.1, 20)),
                SetAgainst("11 other herds of Skelderdale Foot Trimming", Party.OTHERS, Reading(9, 4, 15)),
                SetAgainst("a country, whole herds, 2002", Party.PUBLISHED, Reading(3.2)),
            ),
        ),
        Contest("Digital dermatitis", (SetAgainst("this herd, 2026", Party.OWN, None),)),
    ),
)
AGAINST_LONG = AgainstOthers(
    LONG,
    (
        Contest(
            "A lesion with a name that goes on and on, on any claw",
            (SetAgainst(LONG, Party.PUBLISHED, Reading(100, 99, 100)),),
        ),
    ),
)

NOTHING = (
    OverTime(UNIT, ()),
    Kinds(UNIT, (KindYear("2026", None, None),)),
    SoleHeat((ZoneCount(Foot.LEFT_HIND, Claw.LATERAL, None, 3),)),
    WhichCows(UNIT, (Split("Season", (group("summer", 0, 0),)),)),
    TimeToNext((), (), 0),
    AgainstOthers(UNIT, (Contest("Sole ulcer", (SetAgainst("this herd", Party.OWN, None),)),)),
)
SOMETHING = (
    OVER, OVER_ONE, OVER_NONE_FOUND, OVER_FORTY, KINDS, KINDS_ONE, KINDS_TEN, HEAT, HEAT_HIND, HEAT_FULL,
    WHICH, WHICH_LONG, NEXT, NEXT_FEW, NEXT_MANY, AGAINST, AGAINST_LONG,
)  # fmt: skip
