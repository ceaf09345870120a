"""The mail that a trimmer gets of an evening: tomorrow's round, what to mind, and what is to be done tonight."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, datetime

from trimops.paper.days import clock, day_short
from trimops.paper.figures import counted


@dataclass(frozen=True)
class RoundStop:
    """One visit. `start` is aware and in the business's zone; `hygiene` is the farm's level (0 first, 3 last), told as
    `hygiene_words`; `tight` the chance in a hundred to be done before the next milking, None where that is no
    matter."""

    start: datetime
    farm: str
    address: str
    cows: int
    lame: int
    hygiene: int
    hygiene_words: str
    ring: str = ""
    way_in: str = ""
    note: str = ""
    tight: int | None = None


@dataclass(frozen=True)
class EveningMail:
    """One van's. `tonight` are (what, why) pairs in the order of the list; `load` is what the farms do not have."""

    van: str
    day: date
    title: str
    stops: Sequence[RoundStop]
    tonight: Sequence[tuple[str, str]]
    load: Sequence[str] = field(default=())
    caution: str = ""

    @property
    def is_empty(self) -> bool:
        return not self.stops and not self.tonight


def evening_subject(mail: EveningMail) -> str:
    """ "Tue 1 Dec, Van 1: 3 farms, 34 cows", or what is to be done tonight where the van stays in."""
    if not mail.stops:
        return f"{mail.van}: {mail.title}"
    farms = len({stop.farm for stop in mail.stops})
    cows = sum(stop.cows for stop in mail.stops)
    return f"{day_short(mail.day)}, {mail.van}: {counted(farms, 'farm')}, {counted(cows, 'cow')}"


def evening_text(mail: EveningMail) -> str:
    """As plain text, to be read in a van."""
    parts = [_round(mail), _minding(mail), _tonight(mail)]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _round(mail: EveningMail) -> list[str]:
    if not mail.stops:
        return [f"{mail.van} has no visit on {day_short(mail.day)}."]
    return [f"{mail.van}, {day_short(mail.day)}", *(line for stop in mail.stops for line in _stop(stop))]


def _stop(stop: RoundStop) -> list[str]:
    lame = f" ({stop.lame} lame)" if stop.lame else ""
    first = f"{clock(stop.start)}  {stop.farm}: {counted(stop.cows, 'cow')}{lame}"
    told = [
        ", ".join(line.strip() for line in stop.address.splitlines() if line.strip()),
        f"Hygiene: {stop.hygiene_words}",
        stop.ring and f"Ring {stop.ring}",
        stop.way_in and f"Way in: {stop.way_in}",
        stop.note,
    ]
    return [first, *(f"       {line}" for line in told if line)]


def _minding(mail: EveningMail) -> list[str]:
    lines = [f"Load {thing}." for thing in mail.load]
    for before, after in zip(mail.stops, mail.stops[1:], strict=False):
        if after.hygiene < before.hygiene:
            lines.append(
                f"{after.farm} comes after {before.farm} and has the cleaner herd: "
                "wash down in between, or change the order."
            )
    lines += [
        f"{stop.farm}: {stop.tight} in a hundred to be done before the cows are wanted for milking."
        for stop in mail.stops
        if stop.tight is not None
    ]
    lines += [mail.caution] if mail.caution and mail.stops else []
    return ["To mind:", *(f"- {line}" for line in lines)] if lines else []


def _tonight(mail: EveningMail) -> list[str]:
    if not mail.tonight:
        return []
    return [mail.title, *(f"- {what}{f' ({why})' if why else ''}" for what, why in mail.tonight)]
