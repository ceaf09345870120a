"""The sentences for why a stop is where it is."""

from collections.abc import Mapping

from visits.domain.planning.reasons.names import Saying, Told, things

SAME = 0.5
"""Minor units: below that two costs are called the same."""


def _late(told: Told) -> str:
    days = things(told.number("days"), "day", "days")
    price = f", which costs {told.money('money')}" if told.number("money") else ""
    return f"{days} after its last day, {told.day('due')}{price}."


def _due_day(told: Told) -> str:
    price = f", at {told.money('money')} a day" if told.number("money") else ""
    return f"{told.day('due')} is its last day: it would be late from {told.day('late_from')} on{price}."


def _only_fits_here(told: Told) -> str:
    if told.number("tried") == 1:
        return "As the week stands it does not fit into the one other shift that its open hours allow."
    return f"As the week stands it fits into none of the {told.whole('tried')} other shifts that its open hours allow."


def _hygiene(told: Told) -> str:
    order = [
        f"{word} {told.job(word)} (hygiene {told.whole(f'{word}_level')})"
        for word in ("after", "before")
        if told.has(word)
    ]
    price = (
        f" But for that, this day could cost {told.money('money')} less."
        if told.number("money") > SAME
        else ""
    )
    return f"It must come {' and '.join(order)}: its own hygiene is {told.whole('level')}.{price}"


def _next_best(told: Told) -> str:
    late = f", {things(told.number('days_late'), 'day', 'days')} late" if told.number("days_late") else ""
    where = f"{told.shift('shift')} on {told.moment('start')}{late}"
    return f"The next-best shift is {where}: {_against(told)}."


def _other_place(told: Told) -> str:
    return f"The next-best place on this day is {told.clock('start')}: {_against(told)}."


def _against(told: Told) -> str:
    if abs(told.number("more")) < SAME:
        return "that would cost the same"
    return f"that would cost {told.more_or_less('more')}"


def _one_moved(told: Told) -> str:
    other = f"{told.job('other')} moved to {told.moment('other_start')} with {told.shift('other_shift')}"
    late = f", {things(told.number('days_late'), 'day', 'days')} late" if told.number("days_late") else ""
    here = f"{told.moment('start')} with {told.shift('shift')}{late}"
    return f"With {other} it would fit on {here}: {_against(told)}."


def _detour(told: Told) -> str:
    km, drive = told.number("km"), told.number("drive_minutes")
    road = f"{km:.1f} km and {drive:.0f} min of driving" if km > 0 or drive > 0 else "no road at all"
    free = told.number("free_minutes")
    rest = (
        f", {abs(free):.0f} min of waiting and meal {'more' if free > 0 else 'less'}"
        if abs(free) >= 1
        else ""
    )
    return f"Coming here adds {road}{rest}; {told.money('money')} in all, the visit's time included."


def _alone(told: Told) -> str:
    road = f"{told.number('km'):.1f} km and {told.number('drive_minutes'):.0f} min of driving"
    return (
        f"It is the only visit of its shift: {road}; {told.money('money')} in all, the visit's time included."
    )


STOP_SAYINGS: Mapping[str, Saying] = {
    "promised": lambda told: f"Promised for {told.moment('start')}.",
    "late": _late,
    "due-day": _due_day,
    "only-shift": lambda told: "No other shift of this week may do it in its open hours.",
    "only-day": lambda told: (
        f"{told.day('day')} is the only day on which a shift may do it in its open hours."
    ),
    "only-fits-here": _only_fits_here,
    "hygiene": _hygiene,
    "as-it-opens": lambda told: f"It starts at {told.clock('start')}, when its open hours begin.",
    "as-it-closes": lambda told: f"It is done at {told.clock('finish')}, when its open hours end.",
    "next-best": _next_best,
    "other-place": _other_place,
    "one-moved": _one_moved,
    "detour": _detour,
    "alone": _alone,
    "worth-doing": lambda told: (
        f"Leaving it out would cost {told.money('leave_out')}; here it costs {told.money('money')}."
    ),
}
