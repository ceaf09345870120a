"""What a trimmer means to put down for a cow, before any tap: plain words that the hand turns into taps."""

from dataclasses import dataclass, replace

from tests.browser.crush_yard import HERD

ALL_FOUR, HIND_FEET, NONE = "All four", "Hind feet", "None"


@dataclass(frozen=True)
class Seen:
    """One lesion on one place. `severity` None: left as the page offers it."""

    lesion: str
    claw: str
    zone: int
    severity: int | None = None
    stage: str = ""


@dataclass(frozen=True)
class FootPlan:
    """What is put down on one foot. `goes_on`: block wood, wrap … as the page names them to tests."""

    foot: str
    seen: tuple[Seen, ...] = ()
    goes_on: tuple[str, ...] = ()
    signs: tuple[str, ...] = ()
    block_off: str = ""
    whole: str = ""
    wall_mm: int | None = None
    toe_angle: int | None = None
    look_again: int | None = None
    for_vet: str = ""
    photos: int = 0


@dataclass(frozen=True)
class CowPlan:
    """One cow. `is_asked`: the page is to ask “Sure?” before it keeps her."""

    number: str
    what: str = "sound"
    plain: str = ALL_FOUR
    feet: tuple[FootPlan, ...] = ()
    score: int | None = None
    note: str = ""
    for_vet: str = ""
    told: str = ""
    photos: int = 0
    has_band: bool = False
    is_uncut: bool = False
    is_asked: bool = False

    @property
    def is_new(self) -> bool:
        return self.number not in HERD

    def with_foot(self, **changes: object) -> "CowPlan":
        """The same with changes to her first foot."""
        first, *rest = self.feet
        return replace(self, feet=(replace(first, **changes), *rest))


def sound(number: str) -> CowPlan:
    return CowPlan(number)


def hind_only(number: str) -> CowPlan:
    return CowPlan(number, "hind feet only", plain=HIND_FEET)


def no_cut(number: str) -> CowPlan:
    return CowPlan(number, "no cut needed", plain=NONE, is_uncut=True)


def sole_ulcer(number: str, foot: str = "LH", severity: int | None = None) -> CowPlan:
    seen = (Seen("SU", "lateral", 4, severity),)
    return CowPlan(
        number, "sole ulcer", feet=(FootPlan(foot, seen, ("block wood", "wrap"), ("has_pain",)),), score=2
    )


def bare_ulcer(number: str) -> CowPlan:
    """What the bar of seven taps names: one sole ulcer, block on the partner claw, wrap, re-check by rule."""
    return CowPlan(
        number, "sole ulcer", feet=(FootPlan("LH", (Seen("SU", "lateral", 4),), ("block wood", "wrap")),)
    )


def dermatitis(number: str, foot: str = "RH", stage: str = "M2") -> CowPlan:
    goes_on = ("dressing", "wrap") if stage in ("M1", "M2", "M4.1") else ()
    return CowPlan(number, "dermatitis", feet=(FootPlan(foot, (Seen("DD", "skin", 10, 2, stage),), goes_on),))


def white_line(number: str, lesion: str = "WL") -> CowPlan:
    """A slight one keeps its loose horn, and the page asks about that; an abscess has it taken off."""
    foot = FootPlan("RH", (Seen(lesion, "lateral", 3),))
    return CowPlan(number, "white line", feet=(foot,), is_asked=lesion == "WL")


def heel_erosion(number: str) -> CowPlan:
    feet = tuple(
        FootPlan(foot, (Seen("HHE", "lateral", 6), Seen("HHE", "medial", 6))) for foot in ("LH", "RH")
    )
    return CowPlan(number, "heel horn erosion", feet=feet, score=1)


def several(number: str) -> CowPlan:
    left = FootPlan("LH", (Seen("SU", "lateral", 4, 3), Seen("WLA", "lateral", 2)), ("block wood", "wrap"))
    right = FootPlan("RH", (Seen("DD", "skin", 10, 1, "M4.1"), Seen("SH", "lateral", 5, 2)), ("dressing",))
    return CowPlan(number, "several", feet=(left, right), score=2)


def block_off(number: str) -> CowPlan:
    return CowPlan(
        number, "re-check", plain=NONE, feet=(FootPlan("LH", block_off="medial", whole="Trimmed"),)
    )


def for_the_vet(number: str) -> CowPlan:
    """Sensitive tissue open: work stopped, so nothing is taken for done; the page asks about relief and loose horn."""
    foot = FootPlan(
        "LH",
        (Seen("TU", "lateral", 1, 3),),
        ("wrap",),
        ("sensitive_tissue", "deep_infection", "has_pain"),
        for_vet="dark and stinking at the toe",
    )
    words = {"for_vet": "cannot stand on it", "told": "H. Manager", "note": "left in the straw pen"}
    return CowPlan(
        number, "for the vet", plain=NONE, feet=(foot,), score=3, has_band=True, is_asked=True, **words
    )
