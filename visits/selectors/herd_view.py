"""One herd's feet as the page and the yearly paper show them."""

from dataclasses import dataclass
from datetime import MINYEAR, date, datetime

from farms.models import Farm
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from trimops.paper.figures import counted
from trimops.paper.to_svg import to_svg
from visits.documents.herd.picture import draw
from visits.documents.herd_story_content import FigureTable, HerdPicture, HerdStory
from visits.domain.herd.facts import HerdFacts
from visits.domain.herd.finding import Finding, FindingKind, StoryPeriod, calendar_year, year_up_to
from visits.domain.herd.herd_story import HerdTold, herd_told
from visits.selectors.business_herds import business_herds
from visits.selectors.herd_contents import herd_contents
from visits.selectors.herd_facts import herd_facts
from visits.selectors.herd_tables import herd_tables
from visits.selectors.letterhead import letterhead_of

SVG_CLASS = "herd-picture"
CAUTIONS = (
    "What is counted are lesions seen at the trim. They are no diagnosis; that is the vet's.",
    "An interval says how far chance alone could have moved a figure: at 95 %, it misses about one time in twenty.",
)
MARKS = {
    FindingKind.BETTER: ("done", "Better"),
    FindingKind.WORSE: ("due", "Worse"),
    FindingKind.TOO_FEW: ("plain", "Too few to tell"),
    FindingKind.PICKED: ("plain", "Part of the herd"),
}


@dataclass(frozen=True)
class PictureView:
    """One finding with its drawing (SVG, empty where there is nothing to draw). `mark` is (look, words), or None."""

    finding: Finding
    svg: str

    @property
    def mark(self) -> tuple[str, str] | None:
        return MARKS.get(self.finding.kind)


@dataclass(frozen=True)
class HerdView:
    """`answer` follows the farm's name; `facts` is what all of it rests on; `years` have a paper."""

    farm: Farm
    answer: str
    facts: str
    pictures: tuple[PictureView, ...]
    tables: tuple[FigureTable, ...]
    years: tuple[int, ...]
    cautions: tuple[str, ...] = CAUTIONS


def herd_view(scope: Scope, farm: Farm, now: datetime) -> HerdView:
    """The twelve months up to today, and what came before. Seven queries; `farm` comes with its business."""
    today = local_day(now, farm.business.zone)
    facts = herd_facts(scope, farm, today)
    told = herd_told(facts, year_up_to(today), business_herds(farm, today))
    drawn = _pictures(told, farm)
    return HerdView(
        farm=farm,
        answer=told.headline,
        facts=_facts_line(facts, told.period),
        pictures=tuple(
            PictureView(finding, to_svg(picture.drawing, SVG_CLASS) if picture.drawing else "")
            for finding, picture in zip(told.findings, drawn, strict=True)
        ),
        tables=herd_tables(facts, told),
        years=years_of(facts),
    )


def herd_year_story(scope: Scope, farm: Farm, year: int, now: datetime) -> HerdStory:
    """The paper of a calendar year, or of as much as has gone by. NotFound for a year without a cow at the crush."""
    zone = farm.business.zone
    today = local_day(now, zone)
    if not MINYEAR <= year <= today.year:
        raise NotFound(f"No cow of {farm.name} was at the crush in {year}.")
    facts = herd_facts(scope, farm, min(today, date(year, 12, 31)))
    if year not in years_of(facts):
        raise NotFound(f"No cow of {farm.name} was at the crush in {year}.")
    told = herd_told(facts, calendar_year(year, today), business_herds(farm, facts.today))
    return HerdStory(
        letterhead=letterhead_of(farm.business),
        farm_name=farm.name,
        year=year,
        made_at=now.astimezone(zone),
        answer=f"{farm.name}: {told.headline}",
        facts=_facts_line(facts, told.period),
        pictures=_pictures(told, farm),
        tables=herd_tables(facts, told),
        cautions=CAUTIONS[:1],  # how to read an interval stands on the paper already
    )


def years_of(facts: HerdFacts) -> tuple[int, ...]:
    """The years in which a cow was at the crush, the newest first."""
    return tuple(dict.fromkeys(day.year for day in reversed(facts.days_of_work)))


def _pictures(told: HerdTold, farm: Farm) -> tuple[HerdPicture, ...]:
    contents = herd_contents(told, farm.business.name)
    return tuple(
        HerdPicture(finding.title, finding.sentence, draw(content), finding.basis)
        for finding, content in zip(told.findings, contents, strict=True)
    )


def _facts_line(facts: HerdFacts, period: StoryPeriod) -> str:
    looks = list(facts.seen_between(period.start, period.end))
    cows, visits = len({look.cow for look in looks}), len({look.visit for look in looks})
    herd = f"Herd of {counted(facts.herd_size, 'cow')}. " if facts.herd_size else ""
    return (
        f"{herd}{counted(cows, 'cow')} seen {period.words}, at {counted(visits, 'visit')}; "
        f"{counted(len(looks), 'look')} at a cow in all."
    )
