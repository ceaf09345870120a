"""Published rates of lesions and lameness to hold a herd against, each with its source, place and years.

Data, not rules: figures as printed (trade-facts 4), of herds unlike this one in breed, housing, country and year, and
of observers who do not see alike. `opened` says that an excerpt of the source was read; the papers themselves were
not. `count` and `total` are given only where they were printed; else the figure is a percentage without an interval,
and the number of cows it rests on is `of_cows` of many herds. Unit: per 100 cows seen, or per 100 cow-years (`per`).

Must not be shown against a round of picked cows, nor one `Per` against another: cases of lameness per cow-year are not
lesions found per cow-year, for many a lesion is seen before she is lame. `whole_herd` says whether all cows were to be
trimmed or scored: None where the excerpt does not say. Left out are the rates per cause of Afonso et al. (they pass
the rate of all causes; too unlike each other) and figures whose excerpt names no numbers.
"""

from dataclasses import dataclass
from enum import StrEnum

from visits.domain.herd.lesion_families import What, what_label
from visits.domain.lesions import LesionCode


class Per(StrEnum):
    """What the published figure is counted over."""

    COWS_TRIMMED = "cows_trimmed"
    COWS_SCORED = "cows_scored"
    LAMENESS_COW_YEARS = "lameness_cow_years"


@dataclass(frozen=True)
class Source:
    """A study: how it is cited, where and when, and whether an excerpt of it was opened."""

    key: str
    cited: str
    country: str
    population: str
    years: str
    opened: bool = True

    @property
    def tag(self) -> str:
        return "excerpt read" if self.opened else "from memory"


@dataclass(frozen=True)
class PublishedRate:
    """One printed figure. `code` None: any lesion of cows trimmed, else lameness, whatever its cause.

    `low` and `high` as `spread` says: "95 % interval" as printed, or "herds" from the lowest to the highest herd.
    """

    source: Source
    code: What
    per: Per
    per_100: float
    whole_herd: bool | None = None
    of_cows: int | None = None
    count: int | None = None
    total: int | None = None
    low: float | None = None
    high: float | None = None
    spread: str = ""
    housing: str = ""

    @property
    def what(self) -> str:
        return _LAMENESS.get(self.per) or what_label(self.code)


_LAMENESS = {Per.COWS_SCORED: "lame cows", Per.LAMENESS_COW_YEARS: "cases of lameness"}

GRIFFITHS = Source(
    "griffiths-2018",
    "Griffiths et al. 2018, Front Vet Sci 5:65",
    "GB",
    "61 farms, 14,700 cows",
    "2015 to 2016",
)
AFONSO = Source(
    "afonso-2020", "Afonso et al. 2020, Front Vet Sci 7:542", "GB", "68 papers taken together", "to 2020"
)
SOLANO_2015 = Source("solano-2015", "Solano et al. 2015", "CA", "141 freestall herds, 5,637 cows", "to 2015")
SOLANO_2016 = Source(
    "solano-2016",
    "Solano et al. 2016, J Dairy Sci 99:6828 (volume and page from memory)",
    "CA",
    "whole-herd trims of 69 herds, 8,020 cows",
    "to 2016",
)
CRAMER = Source(
    "cramer-2008",
    "Cramer et al. 2008, J Dairy Sci 91:3888",
    "CA",
    "204 herds, 13,530 cows, 5 trimmers",
    "to 2008",
)
MANSKE = Source("manske-2002", "Manske 2002, thesis", "SE", "102 herds, 4,899 cows", "to 2002")
AUSTRIA = Source(
    "austria-2010-2019",
    "Austrian claw-health benchmark 2010 to 2019",
    "AT",
    "526 herds, 28,638 cattle",
    "2010 to 2019",
)

_TRIMMED, _SCORED, _YEARS = Per.COWS_TRIMMED, Per.COWS_SCORED, Per.LAMENESS_COW_YEARS
_CI, _HERDS = "95 % interval", "herds"

PUBLISHED_RATES: tuple[PublishedRate, ...] = (
    PublishedRate(
        GRIFFITHS,
        None,
        _SCORED,
        28.2,
        True,
        14700,
        count=4145,
        total=14700,
        low=5.8,
        high=65.4,
        spread=_HERDS,
    ),
    PublishedRate(AFONSO, None, _SCORED, 29.5, None, low=26.7, high=32.4, spread=_CI),
    PublishedRate(AFONSO, None, _YEARS, 30.9, None, low=24.5, high=37.9, spread=_CI),
    PublishedRate(SOLANO_2015, None, _SCORED, 21.0, None, 5637, low=0.0, high=69.0, spread=_HERDS),
    PublishedRate(SOLANO_2016, LesionCode.DD, _TRIMMED, 15.0, True, 8020),
    PublishedRate(SOLANO_2016, LesionCode.SU, _TRIMMED, 6.0, True, 8020),
    PublishedRate(SOLANO_2016, LesionCode.WL, _TRIMMED, 4.0, True, 8020),
    PublishedRate(CRAMER, None, _TRIMMED, 46.4, None, housing="free stall"),
    PublishedRate(CRAMER, LesionCode.DD, _TRIMMED, 22.7, None, housing="free stall"),
    PublishedRate(CRAMER, LesionCode.SH, _TRIMMED, 11.0, None, housing="free stall"),
    PublishedRate(CRAMER, LesionCode.U, _TRIMMED, 9.2, None, housing="free stall"),
    PublishedRate(CRAMER, None, _TRIMMED, 25.7, None, housing="tie stall"),
    PublishedRate(CRAMER, LesionCode.DD, _TRIMMED, 9.3, None, housing="tie stall"),
    PublishedRate(CRAMER, LesionCode.SH, _TRIMMED, 7.7, None, housing="tie stall"),
    PublishedRate(CRAMER, LesionCode.U, _TRIMMED, 4.7, None, housing="tie stall"),
    PublishedRate(MANSKE, None, _TRIMMED, 72.0, None, 4899),
    PublishedRate(AUSTRIA, LesionCode.HHE, _TRIMMED, 59.2, None, 28638),
    PublishedRate(AUSTRIA, LesionCode.WL, _TRIMMED, 42.6, None, 28638),
    PublishedRate(AUSTRIA, LesionCode.DD, _TRIMMED, 29.6, None, 28638),
    PublishedRate(AUSTRIA, LesionCode.U, _TRIMMED, 14.2, None, 28638),
)


def published_for(what: What, per: Per, country: str = "") -> tuple[PublishedRate, ...]:
    """The printed figures of the same thing counted over the same; those of the herd's own country first."""
    fitting = [rate for rate in PUBLISHED_RATES if rate.per is per and rate.code == what]
    return tuple(sorted(fitting, key=lambda rate: rate.source.country != country))
