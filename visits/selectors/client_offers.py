"""The hours that a farm is offered without anybody at the office: when, and nothing of the round they lie in."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from visits.selectors.asked_visit import Asked
from visits.selectors.farm_offers import farm_offers
from visits.selectors.offer_again import AskedPlace, offer_again
from visits.selectors.offer_lines import OfferLine

MOST = 6
APART = timedelta(minutes=30)


@dataclass(frozen=True)
class ClientOffer:
    """The van can arrive from `first` to `last`. No other farm's name, no money and no way is in it.

    `is_between` says that the van comes from another farm; `late` counts the days after the last day wished for.
    """

    van: int
    first: datetime
    last: datetime
    is_between: bool
    late: int
    is_wished_day: bool

    @property
    def day(self) -> date:
        return self.first.date()


def client_offers(asked: Asked, now: datetime, weekdays: Collection[int] = ()) -> list[ClientOffer]:
    """At most six, in order of time: those in time first, of them those on the wished weekdays, then what costs least.

    `asked` keeps told hours. Places for which a visit moves that nobody was told of are looked at only where nothing
    fits in time as the week stands.
    """
    lines = sorted(_lines(asked, now), key=lambda line: (line.late, not _wished(line, weekdays), line.weight))
    chosen = _well_apart(lines)[:MOST]
    return [_told(line, weekdays) for line in sorted(chosen, key=lambda line: (line.first, line.last))]


def offered_place(asked: Asked, told: AskedPlace, now: datetime) -> AskedPlace | None:
    """The place that was told as the planner knows it, with the visit that moves for it; None when it is gone."""
    if offer_again(asked, told, now) is not None:
        return told
    same = [
        line
        for line in farm_offers(asked, now, swaps=False).moves
        if line.van.pk == told.van and line.first <= told.last and told.first <= line.last
    ]
    line = max(same, key=lambda each: (_shared(each, told), -each.weight), default=None)
    if line is None or line.moved is None:
        return None
    return AskedPlace(told.van, told.first, told.last, line.moved.visit.pk, line.to)


def _lines(asked: Asked, now: datetime) -> list[OfferLine]:
    if not asked.keeps_told:
        raise ValueError("a farm is offered no hour that somebody else was told")
    found = farm_offers(asked, now, swaps=False)
    fits = list(found.fits)
    return fits if any(not line.late for line in fits) else [*fits, *found.moves]


def _well_apart(lines: Iterable[OfferLine]) -> list[OfferLine]:
    """The first of those that begin at about the same time: to the farm two vans, or two turns, are one offer."""
    kept: list[OfferLine] = []
    for line in lines:
        if all(abs(line.first - each.first) >= APART for each in kept):
            kept.append(line)
    return kept


def _wished(line: OfferLine, weekdays: Collection[int]) -> bool:
    return not weekdays or line.day.weekday() in weekdays


def _shared(line: OfferLine, told: AskedPlace) -> float:
    return (min(line.last, told.last) - max(line.first, told.first)).total_seconds()


def _told(line: OfferLine, weekdays: Collection[int]) -> ClientOffer:
    wished = _wished(line, weekdays)
    return ClientOffer(line.van.pk, line.first, line.last, bool(line.after), line.late, wished)
