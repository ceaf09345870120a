"""The reasons of a stored plan in sentences, with farms, vans and money as a page writes them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from trimops.web.templatetags.figures import money as money_words
from visits.domain.planning.reasons.names import Names
from visits.domain.planning.reasons.plan_mark import plan_mark
from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.say_reason import say_reason
from visits.models import HeldHour, Van, Visit, WeekPlan
from visits.selectors.plan_holds import visit_key
from visits.selectors.standing_plan import shift_parts

Documents = Sequence[Mapping[str, object]]
GONE = "a visit that is no longer in the diary"
RULES = {
    "this-plan": "",
    "nearest-by-due-date": "Due first goes first, of those the nearest to the last farm, into the first day with room",
    "same-area-same-day": "The country cut into slices of equal work, a slice for each van and day",
}


@dataclass(frozen=True)
class Why:
    """Sentences on one visit, the strongest first. `is_left_out`: they say what would make room."""

    sentences: tuple[str, ...]
    is_left_out: bool = False


@dataclass(frozen=True)
class Promise:
    """What keeping one promise costs, in a sentence."""

    farm: str
    sentence: str


@dataclass(frozen=True)
class Way:
    """A plan, or what a rule of thumb makes of the week. `rule` is "" for the plan itself; money in its currency."""

    rule: str
    done: int
    left_out: int
    must_left_out: int
    km: float
    hours: float
    days_late: int
    money: Decimal


@dataclass(frozen=True)
class PlanReasons:
    """By the key of the visit. `ways` has the plan first. `complete` is False where there was no time for all."""

    of_visits: Mapping[int, Why]
    promises: Sequence[Promise]
    ways: Sequence[Way]
    complete: bool

    def why(self, visit_pk: int) -> Why | None:
        """What is known of that visit, or None."""
        return self.of_visits.get(visit_pk)


def reasons_of(week_plan: WeekPlan) -> PlanReasons | None:
    """None where none are kept for just this plan: not worked out yet, or it has changed since. Three queries."""
    kept: Mapping[str, object] | None = week_plan.reasons
    if kept is None or week_plan.plan is None or kept.get("of") != plan_mark(week_plan.plan):
        return None
    names = names_of(week_plan)
    visits = {visit_key(job): Why(_said(each, names)) for job, each in _by_job(kept["stops"])}
    visits |= {visit_key(job): Why(_said(each, names), True) for job, each in _by_job(kept["left_out"])}
    promises = [Promise(names.job(job), _said(each, names)[0]) for job, each in _by_job(kept["promises"])]
    return PlanReasons(
        visits, promises, [_way(each) for each in _parts(kept["rules"])], kept["complete"] is True
    )


def names_of(week_plan: WeekPlan) -> Names:
    """Names for the ids of our problems: farms for visits and held hours, vans for shifts."""
    problem: Mapping[str, Documents] = week_plan.problem
    scope = week_plan.scope
    keys = [visit_key(job["id"]) for job in problem["jobs"]]
    visits = Visit.objects.within(scope).select_related("farm").in_bulk(keys)
    vans = Van.objects.within(scope).in_bulk()
    held = {hour.job: hour for hour in HeldHour.objects.within(scope).select_related("farm")}

    def job(name: str) -> str:
        if name in held:
            return f"{held[name].farm.name} (hour held)"
        visit = visits.get(visit_key(name))
        return visit.farm.name if visit else GONE

    def shift(name: str) -> str:
        van = vans.get(shift_parts(name)[0])
        return van.name if van else "a van that is gone"

    return Names(job, shift, lambda minor: money_words(_money(minor), week_plan.business.currency))


def _said(reasons: Documents, names: Names) -> tuple[str, ...]:
    return tuple(say_reason(Reason.of_document(each), names) for each in reasons)


def _way(kept: Mapping[str, object]) -> Way:
    def number(key: str) -> float:
        return float(str(kept[key]))

    return Way(
        RULES[str(kept["code"])],
        int(number("done")),
        int(number("left_out")),
        int(number("must_left_out")),
        number("km"),
        number("hours"),
        int(number("days_late")),
        _money(kept["money"]),
    )


def _money(minor: object) -> Decimal:
    return Decimal(str(minor)) / 100


def _by_job(value: object) -> list[tuple[str, Documents]]:
    return [(str(job), _parts(each)) for job, each in value.items()] if isinstance(value, dict) else []


def _parts(value: object) -> Documents:
    return [part for part in value if isinstance(part, dict)] if isinstance(value, list) else []
