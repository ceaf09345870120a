"""A plan document to what it claims; whatever cannot be read is a breach, never an error."""

from fractions import Fraction

from visits.domain.planning.audit.part import Faults, Part
from visits.domain.planning.audit.plan import Cost, LeftOut, Plan, ToldMeal, ToldShift, ToldStop
from visits.domain.planning.audit.values import (
    AMOUNT,
    INSTANT,
    METRES,
    NUMBER,
    SENTENCE,
    SIGNED_MINUTES,
    TEXT,
    WHOLE,
)

FORMAT = "trimops-week-plan/1"
PLAN_KEYS = "format engine seed seconds cost bound shifts left_out"
SHIFT_KEYS = "id leave return work_minutes km cows meal stops"
STOP_KEYS = "job arrive start finish travel_minutes km days_late"


def read_plan(document: object) -> tuple[Plan, Faults]:
    """The plan, and what is wrong with its form. With anything in `broken` do not rely on the plan."""
    faults = Faults()
    part = Part(document, "", PLAN_KEYS, faults)
    if part.need("format", TEXT) != FORMAT and part.has("format"):
        part.wrong("format", f"is not {FORMAT}")
    part.need("engine", TEXT)
    part.need("seed", WHOLE)
    part.need("seconds", AMOUNT)
    plan = Plan(
        cost=_cost(part.part("cost", "total shifts lateness left_out")),
        bound=_bound(part),
        shifts=tuple(_shift(shift) for shift in part.parts("shifts", SHIFT_KEYS)),
        left_out=tuple(_left_out(entry) for entry in part.parts("left_out", "job reason detail")),
    )
    return plan, faults


def _cost(part: Part) -> Cost:
    return Cost(*(part.need(key, NUMBER) for key in ("total", "shifts", "lateness", "left_out")))


def _bound(part: Part) -> Fraction | None:
    if "bound" in part.values and not part.has("bound"):
        return None
    return part.need("bound", NUMBER)


def _shift(part: Part) -> ToldShift:
    return ToldShift(
        path=part.path,
        id=part.need("id", TEXT),
        leave=part.need("leave", INSTANT),
        back=part.need("return", INSTANT),
        work=part.need("work_minutes", SIGNED_MINUTES),
        metres=part.need("km", METRES),
        cows=part.need("cows", WHOLE),
        meal=_meal(part),
        stops=tuple(_stop(stop) for stop in part.parts("stops", STOP_KEYS)),
    )


def _meal(part: Part) -> ToldMeal | None:
    if "meal" in part.values and not part.has("meal"):
        return None
    meal = part.part("meal", "start end")
    return ToldMeal(meal.path, meal.need("start", INSTANT), meal.need("end", INSTANT))


def _stop(part: Part) -> ToldStop:
    return ToldStop(
        path=part.path,
        job=part.need("job", TEXT),
        arrive=part.need("arrive", INSTANT),
        start=part.need("start", INSTANT),
        finish=part.need("finish", INSTANT),
        travel=part.need("travel_minutes", SIGNED_MINUTES),
        metres=part.need("km", METRES),
        days_late=part.need("days_late", WHOLE),
    )


def _left_out(part: Part) -> LeftOut:
    part.need("detail", SENTENCE)
    return LeftOut(part.path, part.need("job", TEXT), part.need("reason", TEXT))
