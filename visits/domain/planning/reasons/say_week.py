"""The sentences for promises and for the plan against rules of thumb."""

from collections.abc import Mapping

from visits.domain.planning.reasons.names import Saying, Told, things

HOW = "by trying it and its day's neighbours in every place, one by one"


def _promise(told: Told) -> str:
    kept = f"Promised for {told.moment('promised')}"
    room = f", with room for {told.job('room_for')}" if told.has("room_for") else ""
    if told.number("money") < 1 and not room:
        return f"{kept}: no cheaper hour was found for it, {HOW}."
    where = f"{told.moment('start')} with {told.shift('shift')}"
    if told.number("money") < 1:
        return f"{kept}: at {where} there would be room for {told.job('room_for')} as well."
    return f"{kept}: at {where} the week would cost at least {told.money('money')} less{room} (found {HOW})."


def _sums(told: Told) -> str:
    out = things(told.number("left_out"), "left out", "left out")
    must = told.number("must_left_out")
    musts = f", {must:.0f} of them to be done this week" if must else ""
    late = things(told.number("days_late"), "day late", "days late")
    road = f"{told.number('km'):,.0f} km and {told.number('hours'):,.1f} h at work"
    visits = things(told.number("done"), "visit", "visits")
    return f"{visits}, {out}{musts}; {road}, {late}; {told.money('money')} in all."


WEEK_SAYINGS: Mapping[str, Saying] = {
    "promise": _promise,
    "this-plan": lambda told: f"This plan: {_sums(told)}",
    "nearest-by-due-date": lambda told: (
        "Due first goes first, of those the nearest to the last farm, each into the first day with room: "
        f"{_sums(told)}"
    ),
    "same-area-same-day": lambda told: (
        "The country cut into as many slices as there are shifts, a slice a shift, leftovers into the next: "
        f"{_sums(told)}"
    ),
}
