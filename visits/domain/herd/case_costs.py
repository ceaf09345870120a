"""What cases of lame feet cost, by published figures, as a range and never as a bill.

Method: new cases of a lesion times the published cost of one case. The low end counts only lesions with a published
figure of their own; the high end adds, at the study's average of all lame cases where it gives one, the other cases
that are always painful. The rest (bruised soles, heel erosion, misshapen claws) were seldom lame and are not priced.
Cases are gathered by parent, so an ulcer, place not said, is priced as the sole ulcer that most of them are. Each
study stands by itself, in the money and prices of its own year: nothing is turned into another currency, moved to
today's prices, or added over studies. Unit: currency of the study. What is in a cost differs between studies (lost
milk, fertility, culling, treatment, labour), and the farm's own cases may be milder or worse: the studies priced lame
cows, and a lesion found at a routine trim often had not made her lame.

Sources, all **from memory**, none opened: Willshire and Bell 2009, Cattle Practice 17:136 (UK, pounds); Cha et al.
2010, Prev Vet Med 97:1 (USA, dollars). Charfeddine and Perez-Cabal 2017, J Dairy Sci 100:653, was left out: its
figures are by severity and year and could not be recalled for certain.

Must not be shown without the source, its year and the tag, nor for fewer cases than one.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from visits.domain.lesion_names import family_of, is_always_painful
from visits.domain.lesions import LesionCode


@dataclass(frozen=True)
class CostStudy:
    """A published study. `average` is its mean over all cases of lameness, None when it gives none we know."""

    key: str
    cited: str
    year: int
    currency: str
    country: str
    average: Decimal | None = None
    opened: bool = False

    @property
    def tag(self) -> str:
        return "excerpt read" if self.opened else "from memory"


@dataclass(frozen=True)
class CaseCost:
    """The cost of one case of one lesion, `low` to `high`; both the same where the study prints one figure."""

    study: CostStudy
    lesion: LesionCode
    low: Decimal
    high: Decimal


@dataclass(frozen=True)
class CostRange:
    """By one study: `priced` cases have a figure of their own, `averaged` ones only the study's average, `unpriced`
    ones none. `low` to `high` in the study's money and year."""

    study: CostStudy
    low: Decimal
    high: Decimal
    priced: int
    averaged: int
    unpriced: int


WILLSHIRE_BELL = CostStudy(
    "willshire-bell-2009",
    "Willshire and Bell 2009, Cattle Practice 17:136",
    2009,
    "GBP",
    "GB",
    average=Decimal("323.47"),
)
CHA = CostStudy("cha-2010", "Cha et al. 2010, Prev Vet Med 97:1", 2010, "USD", "US")
STUDIES = (WILLSHIRE_BELL, CHA)


def _one(study: CostStudy, lesion: LesionCode, cost: str) -> CaseCost:
    return CaseCost(study, lesion, Decimal(cost), Decimal(cost))


CASE_COSTS: tuple[CaseCost, ...] = (
    _one(WILLSHIRE_BELL, LesionCode.SU, "518.73"),
    _one(WILLSHIRE_BELL, LesionCode.WL, "300.05"),
    _one(WILLSHIRE_BELL, LesionCode.DD, "75.57"),
    _one(CHA, LesionCode.SU, "216.07"),
    _one(CHA, LesionCode.DD, "132.96"),
    _one(CHA, LesionCode.IP, "120.70"),
)
PRICED_AS = {LesionCode.U: LesionCode.SU}


def cost_range(cases: Mapping[LesionCode, int], study: CostStudy = WILLSHIRE_BELL) -> CostRange | None:
    """What the new cases come to by one study; None when it prices none of them. ValueError on counts below 0."""
    if any(count < 0 for count in cases.values()):
        raise ValueError("a number of cases below 0 cannot be")
    low = high = Decimal(0)
    priced = averaged = unpriced = 0
    for lesion, count in cases.items():
        cost = _cost_of(lesion, study)
        if cost is not None:
            priced += count
            low, high = low + count * cost.low, high + count * cost.high
        elif study.average is not None and is_always_painful(lesion):
            averaged += count
            high += count * study.average
        else:
            unpriced += count
    return CostRange(study, low, high, priced, averaged, unpriced) if priced else None


def cost_ranges(cases: Mapping[LesionCode, int], country: str = "GB") -> tuple[CostRange, ...]:
    """The range by every study that prices some of the cases, the country's own first; never added together."""
    found = [cost_range(cases, study) for study in sorted(STUDIES, key=lambda s: s.country != country)]
    return tuple(each for each in found if each is not None)


def _cost_of(lesion: LesionCode, study: CostStudy) -> CaseCost | None:
    """The study's own figure for the lesion or its parent."""
    names = (PRICED_AS.get(lesion, lesion), family_of(lesion))
    found = (cost for name in names for cost in CASE_COSTS if cost.study is study and cost.lesion is name)
    return next(found, None)
