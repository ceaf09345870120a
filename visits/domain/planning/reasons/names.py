"""How a reader knows the jobs and shifts of a problem, and how money is written."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime

from visits.domain.planning.reasons.reason import Figure, Reason


@dataclass(frozen=True)
class Names:
    """`job` and `shift` turn ids into names, `money` minor units into text."""

    job: Callable[[str], str] = str
    shift: Callable[[str], str] = str
    money: Callable[[float], str] = "{:,.0f}".format


@dataclass(frozen=True)
class Told:
    """The figures of one reason as words. A figure that is missing raises KeyError: nothing is said without it."""

    figures: Mapping[str, Figure]
    names: Names

    def number(self, key: str) -> float:
        """The figure itself."""
        return float(str(self.figures[key]))

    def whole(self, key: str) -> str:
        """To a whole number; never rounded down to nothing."""
        value = self.number(key)
        return "less than 1" if 0 < value < 0.5 else f"{value:,.0f}"

    def money(self, key: str, times: float = 1) -> str:
        """As the reader writes money."""
        return self.names.money(self.number(key) * times)

    def job(self, key: str) -> str:
        """The name of the job with that id."""
        return self.names.job(str(self.figures[key]))

    def shift(self, key: str) -> str:
        """The name of the shift with that id."""
        return self.names.shift(str(self.figures[key]))

    def day(self, key: str) -> str:
        """Tuesday 3 March."""
        day = date.fromisoformat(str(self.figures[key])[:10])
        return f"{WEEKDAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}"

    def clock(self, key: str) -> str:
        """10:20 (cut to the minute, in the zone of the problem)."""
        return f"{datetime.fromisoformat(str(self.figures[key])):%H:%M}"

    def moment(self, key: str) -> str:
        """Tuesday 10:20."""
        return f"{WEEKDAYS[datetime.fromisoformat(str(self.figures[key])).weekday()]} {self.clock(key)}"

    def more_or_less(self, key: str) -> str:
        """£12.40 more, or £3.10 less."""
        value = self.number(key)
        return f"{self.money(key, 1 if value >= 0 else -1)} {'more' if value >= 0 else 'less'}"

    def minutes(self, key: str) -> str:
        """1 minute, 111 minutes."""
        return things(self.number(key), "minute", "minutes")

    def how_long(self, key: str) -> str:
        """40 min, 2 h 05 min."""
        hours, rest = divmod(round(self.number(key)), 60)
        return f"{hours} h {rest:02} min" if hours else f"{rest} min"

    def has(self, key: str) -> bool:
        """Whether the figure is known."""
        return self.figures.get(key) is not None


def told(reason: Reason, names: Names) -> Told:
    """The figures of `reason`, ready to be said."""
    return Told(reason.figures, names)


def things(number: float, one: str, many: str) -> str:
    """The number with its noun."""
    return f"{number:,.0f} {one if round(number) == 1 else many}"


Saying = Callable[[Told], str]
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
