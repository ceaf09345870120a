"""The shifts of a week problem, faults noted by path."""

from visits.domain.planning.audit.part import Part
from visits.domain.planning.audit.values import AMOUNT, COUNT, INSTANT, MINUTES, TEXT
from visits.domain.planning.audit.week import MealRule, Shift


def read_shift(part: Part, bases: list[Part]) -> Shift:
    shift = Shift(
        id=part.need("id", TEXT),
        crew=part.need("crew", TEXT),
        base=part.need("base", TEXT),
        start=part.need("start", INSTANT),
        end=part.need("end", INSTANT),
        max_work=part.may("max_work_minutes", MINUTES, None),
        max_cows=part.may("max_cows", COUNT, None),
        meal=_meal(part) if part.has("meal") else None,
        cost_fixed=part.may("cost_fixed", AMOUNT, AMOUNT.instead),
        cost_per_hour=part.may("cost_per_work_hour", AMOUNT, AMOUNT.instead),
        cost_per_km=part.may("cost_per_km", AMOUNT, AMOUNT.instead),
    )
    if shift.base and shift.base not in [base.values.get("id") for base in bases]:
        part.wrong("base", f"there is no base {shift.base}")
    if shift.end < shift.start:
        part.wrong("end", "is before its start")
    return shift


def _meal(part: Part) -> MealRule:
    meal = part.part("meal", "minutes earliest latest")
    rule = MealRule(
        meal.need("minutes", MINUTES), meal.need("earliest", INSTANT), meal.need("latest", INSTANT)
    )
    if rule.latest < rule.earliest:
        meal.wrong("latest", "is before earliest")
    return rule
