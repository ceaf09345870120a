"""The sentences for what would make room for a visit that is left out."""

from collections.abc import Mapping

from visits.domain.planning.reasons.names import Saying, Told, things


def _would_fit(told: Told) -> str:
    """Where it would fit and what that would cost."""
    return f"it would fit on {told.moment('start')} with {told.shift('shift')}, for {told.money('money')}"


def _day(told: Told) -> str:
    return f"{told.shift('shift')} on {told.day('start')}"


def _hygiene_order(told: Told) -> str:
    others = told.number("others") - 1
    rest = f" and {things(others, 'other herd', 'other herds')}" if others else ""
    other = f"{told.job('other')} (hygiene {told.whole('other_level')}){rest}"
    return f"But for hygiene {_would_fit(told)}: its own is {told.whole('level')}, and {other} would come out of order."


def _move_one(told: Told) -> str:
    where = f"{told.moment('other_start')} with {told.shift('other_shift')}"
    gives = f"room on {told.moment('start')} with {told.shift('shift')}"
    return f"Moving {told.job('other')} to {where} gives {gives}; the two then cost {told.more_or_less('money')}."


def _let_one_go(told: Told) -> str:
    gives = f"room on {told.moment('start')} with {told.shift('shift')}"
    other = told.job("other")
    own = f"; leaving this visit out costs {told.money('leave_out')}" if told.has("leave_out") else ""
    return f"Leaving out {other} instead gives {gives}, for {told.money('money')} with {other} left out{own}."


def _price(told: Told) -> str:
    fits = f"It fits on {told.moment('start')} with {told.shift('shift')} for {told.money('money')}"
    out = f"leaving it out costs {told.money('leave_out')}"
    return f"{fits}; {out}: it would have to be worth {told.money('more')} more."


def _by_hand(told: Told) -> str:
    return f"Taken out by hand: {_would_fit(told)}."


def _work_limit(told: Told) -> str:
    more = f"{told.minutes('minutes')} more work for {_day(told)} ({told.how_long('work_limit')} in all)"
    return f"With {more} {_would_fit(told)}."


def _meal(told: Told) -> str:
    left = f"{told.whole('meal_minutes')} left"
    return f"With the meal of {_day(told)} {told.minutes('minutes')} shorter ({left}), {_would_fit(told)}."


def _own_van(told: Told) -> str:
    none = "No single limit stretched by up to four hours and no one visit moved makes room. "
    first = "" if told.number("other_ways") else none
    if not told.has("minutes"):
        return f"{first}No van goes out this week."
    if not told.has("leave"):
        away = f"a van sent for it alone would be away {told.how_long('minutes')}"
        return f"{first}It has no open hours that are long enough; {away}."
    gone = f"gone from {told.moment('leave')} to {told.clock('back')}"
    return f"{first}A van sent for it alone would do: {gone}, {told.how_long('minutes')}."


ROOM_SAYINGS: Mapping[str, Saying] = {
    "price": _price,
    "by-hand": _by_hand,
    "fits": lambda told: (
        f"It fits on {told.moment('start')} with {told.shift('shift')}: plan the week again."
    ),
    "move-one": _move_one,
    "let-one-go": _let_one_go,
    "window-end": lambda told: (
        f"If its open hours on {told.day('start')} ended {told.minutes('minutes')} later, {_would_fit(told)}."
    ),
    "window-start": lambda told: (
        f"If its open hours on {told.day('start')} began {told.minutes('minutes')} earlier, {_would_fit(told)}."
    ),
    "work-limit": _work_limit,
    "shift-end": lambda told: (
        f"If {_day(told)} could end {told.minutes('minutes')} later, {_would_fit(told)}."
    ),
    "shift-start": lambda told: (
        f"If {_day(told)} began {told.minutes('minutes')} earlier, {_would_fit(told)}."
    ),
    "longer-day": lambda told: (
        f"If {_day(told)} could end {told.minutes('minutes')} later and work as much longer, {_would_fit(told)}."
    ),
    "meal": _meal,
    "shorter-visit": lambda told: f"If the visit took {told.minutes('minutes')} less, {_would_fit(told)}.",
    "cows-limit": lambda told: (
        f"With {things(told.number('cows'), 'cow', 'cows')} more for {_day(told)} ({told.whole('cows_limit')} in all) "
        f"{_would_fit(told)}."
    ),
    "hygiene-order": _hygiene_order,
    "other-hours": lambda told: (
        f"If the farm could have it on {told.day('start')} from {told.clock('start')} to {told.clock('finish')}, "
        f"{told.shift('shift')} could do it for {told.money('money')}."
    ),
    "any-crew": lambda told: f"If its crew were allowed, {_would_fit(told)}.",
    "no-promise": lambda told: f"Without its promised hour {_would_fit(told)}.",
    "promise-later": lambda told: f"Promised {told.minutes('minutes')} later, {_would_fit(told)}.",
    "promise-earlier": lambda told: f"Promised {told.minutes('minutes')} earlier, {_would_fit(told)}.",
    "van-of-its-own": _own_van,
}
