"""What the forecast of one consumable means, in days and sentences."""

from dataclasses import dataclass
from datetime import date, timedelta
from decimal import ROUND_CEILING, Decimal

from trimops.paper.days import day_short
from visits.domain.kit.forecast.item_forecast import ItemForecast
from visits.domain.kit.kit_answer import day_words, on_day
from visits.domain.kit.read_quantity import quantity_words, seen_words
from visits.domain.kit.stock_kinds import Unit

LIKELY = 0.5
FAR = timedelta(days=180)


@dataclass(frozen=True)
class Standing:
    """One consumable today: `balance` at all places, `below` the names of those below nought, `on_order` what is still
    to come. Not `is_told`: it was never bought, moved or counted anywhere."""

    name: str
    unit: Unit
    balance: Decimal
    on_order: Decimal = Decimal(0)
    below: tuple[str, ...] = ()
    is_told: bool = True


def used_up_on(forecast: ItemForecast, today: date) -> date | None:
    """The day on which the expected use has taken what is there today; None where no use is foreseen."""
    if forecast.cover_days is None:
        return None
    return today + timedelta(days=min(int(forecast.cover_days), 9999))


def likely_gone_on(forecast: ItemForecast) -> date | None:
    """The first day by which running out is more likely than not, what is on order counted in; None beyond the days
    told."""
    return next((day.day for day in forecast.days if day.run_out >= LIKELY), None)


def runs_out_on(forecast: ItemForecast, standing: Standing, today: date) -> date | None:
    """The day to tell: without an order on its way the day it is expected to be used up, as far as days are told."""
    if standing.on_order:
        return likely_gone_on(forecast)
    day = used_up_on(forecast, today)
    return day if day and day <= forecast.days[-1].day else None


def chance_too_late(forecast: ItemForecast) -> float:
    """The chance that it runs out before what is ordered today could be here."""
    before = [day.run_out for day in forecast.days if day.day <= forecast.here_on]
    return before[-1] if before else 0.0


def chance_words(chance: float) -> str:
    """ "under 1 %", "12 %", "over 99 %" """
    percent = round(chance * 100)
    if percent < 1:
        return "under 1 %"
    return "over 99 %" if percent > 99 else f"{percent} %"


def lasts_words(forecast: ItemForecast | None, today: date) -> str:
    """ "until Thu 3 Dec", "used up", "no use foreseen", "half a year and more" """
    day = used_up_on(forecast, today) if forecast else None
    if day is None:
        return "no use foreseen"
    if day > today + FAR:
        return "half a year and more"
    return "used up today" if day <= today else f"until {day_short(day)}"


def item_answer(forecast: ItemForecast | None, standing: Standing, today: date) -> str:
    """The title of its page, without a full stop."""
    there = seen_words(standing.balance, standing.unit)
    if standing.below:
        return f"{standing.name}: below nought in {' and '.join(standing.below)}, count it"
    if not standing.is_told:
        return f"{standing.name}: never bought or counted, say what lies there"
    if forecast is None or forecast.cover_days is None:
        return f"{standing.name}: {there} there, no use foreseen"
    order = _order_words(forecast, standing, today)
    gone = runs_out_on(forecast, standing, today)
    if gone is None:
        return f"{standing.name}: enough beyond {day_words(forecast.days[-1].day, today)}{order}"
    if gone <= today:
        return f"{standing.name}: used up{order}"
    return f"{standing.name}: out {on_day(gone, today)}{order}"


def _order_words(forecast: ItemForecast, standing: Standing, today: date) -> str:
    coming, unit = standing.on_order, standing.unit
    words = f", {quantity_words(coming, unit)} on order" if coming else ""
    more = "more " if coming else ""
    if forecast.order_quantity and (forecast.order_by is None or forecast.order_by <= today):
        return f"{words}, order {quantity_words(forecast.order_quantity, unit)}{more and ' more'}"
    if forecast.order_by is not None:
        return f"{words}; order {more}by {day_words(forecast.order_by, today)}"
    return words


def finding_words(forecast: ItemForecast, standing: Standing, today: date) -> str:
    """The picture in a sentence or two."""
    unit = standing.unit
    here = on_day(forecast.here_on, today)
    words = [
        f"What you order today is here {here}. By then {expected_words(unit, forecast.expected)} will be "
        "used: 8 of 10 times no more than "
        f"{quantity_words(most_of(unit, forecast.q80), unit)}, 19 of 20 times no more than "
        f"{quantity_words(most_of(unit, forecast.q95), unit)}.",
        f"{seen_words(standing.balance, unit)} left now; the chance of running out before is "
        f"{chance_words(chance_too_late(forecast))}.",
    ]
    if forecast.expiry_loss >= _least_loss(unit):
        words.append(
            f"{expected_words(unit, forecast.expiry_loss).capitalize()} will go past the date unused."
        )
    if not forecast.visits:
        words.append("You have no history with it yet: these are figures in print and your recipe.")
    return " ".join(words)


def expected_words(unit: Unit, amount: float) -> str:
    """ "about 12", "less than 1 pair", "about 150 ml": whole pieces, and tens of much ml or g."""
    if unit.is_whole and amount < 1:
        return f"less than {quantity_words(Decimal(1), unit)}"
    step = 10 if not unit.is_whole and amount >= 100 else 1
    return f"about {quantity_words(Decimal(int(amount / step + 0.5) * step), unit)}"


def most_of(unit: Unit, amount: Decimal) -> Decimal:
    """An amount that is hardly exceeded, in whole pieces where it comes in pieces."""
    return amount.to_integral_value(ROUND_CEILING) if unit.is_whole else amount


def _least_loss(unit: Unit) -> float:
    return 0.5 if unit.is_whole else 5.0
