"""When can you come: the hours that the van could come, read off the diary as it stands."""

from collections.abc import Iterable

from rest_framework import serializers

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber
from trimops.api.fields import FIRST_YEAR, LAST_YEAR, OneOf
from trimops.api.kinds import ToldApi
from trimops.api.op import Op, Said
from trimops.api.refusals import CannotBeMeant
from trimops.kernel.clock import local_day
from visits.api.visits import day_word
from visits.api.wishes import MOST_COWS
from visits.domain.mobility import MobilityScale
from visits.domain.offer_days import asked_until
from visits.domain.visit_states import VisitReason
from visits.selectors.asked_visit import Asked
from visits.selectors.business_figures import figures_of
from visits.selectors.client_offers import ClientOffer, client_offers
from visits.selectors.farm_offers import FarmOffers, farm_offers
from visits.selectors.offer_lines import MoveLine, OfferLine
from visits.services.ask_visit import VisitWish
from visits.services.hold_offer import asked_for

WAYS = ("fits", "moves", "asks", "puts_off")


class MovedShown(serializers.Serializer):  # type: ignore[type-arg]
    """The visit that would move for it. `is_told`: its farm knows of the hour that it has."""

    visit = serializers.IntegerField()
    farm = serializers.CharField()
    van = serializers.IntegerField()
    start = serializers.DateTimeField()
    to_van = serializers.IntegerField()
    to_day = serializers.DateField(allow_null=True)
    to_start = serializers.DateTimeField(allow_null=True)
    is_told = serializers.BooleanField()


class OfferShown(serializers.Serializer):  # type: ignore[type-arg]
    """The van can arrive from `first` to `last`. `way`: it fits as the week stands; another visit moves for it; one
    that is confirmed would have to be asked; one would have to wait for another week. What the round is like, who moves
    and what it costs is null for a farm client."""

    way = serializers.ChoiceField(WAYS)
    van = serializers.IntegerField()
    first = serializers.DateTimeField()
    last = serializers.DateTimeField()
    days_late = serializers.IntegerField(help_text="After the last day that was asked for.")
    is_between = serializers.BooleanField(help_text="The van comes from another farm.")
    after = serializers.CharField(allow_null=True)
    work_minutes = serializers.IntegerField(allow_null=True, help_text="That it adds to the round.")
    metres = serializers.IntegerField(allow_null=True)
    money = serializers.DecimalField(14, 2, allow_null=True)
    moved = MovedShown(allow_null=True)
    put_off = serializers.IntegerField(allow_null=True, help_text="The visit that would wait.")


class WhyNotShown(serializers.Serializer):  # type: ignore[type-arg]
    """Why nothing fits in a week."""

    monday = serializers.DateField()
    why = serializers.CharField()


class OffersShown(serializers.Serializer):  # type: ignore[type-arg]
    """What can be offered, best first; for a farm client at most six, in order of time. `minutes` is what the visit
    takes, `hold_minutes` for how long an hour is held."""

    due_from = serializers.DateField()
    due_until = serializers.DateField()
    minutes = serializers.IntegerField()
    hold_minutes = serializers.IntegerField()
    offers = OfferShown(many=True)
    why_not = WhyNotShown(many=True)


class OffersApi(ToldApi):
    """The hours that can be offered a farm for what it asks, by the diary as it stands now. Nothing is kept by asking:
    hold one of them. A farm client is offered no hour for which a visit moves whose farm was told its hour. Without
    days: from today on, and as soon as a cow that walks like that is to be seen."""

    ops = {
        "get": Op(
            Action.ASK_VISITS,
            "list_offers",
            "When can you come",
            shows=OffersShown,
            query={
                "reason": OneOf(VisitReason, help_text="urgent, if nothing is said."),
                "head_count": WholeNumber(
                    min_value=1, max_value=MOST_COWS, help_text="1, if nothing is said."
                ),
                "corrective_count": WholeNumber(
                    min_value=0, max_value=MOST_COWS, help_text="Of these, lame or re-checked."
                ),
                "mobility_scale": OneOf(MobilityScale),
                "mobility_score": WholeNumber(min_value=0, max_value=5, help_text="The worst."),
                "due_from": day_word("Not before this day."),
                "due_until": day_word("Late after this day."),
            },
        )
    }
    also_refuses = (422,)

    def told(self) -> Said:
        farm = self.fetch(Farm, self.kwargs["pk"], "business")
        asked = asked_for(farm, self._wish(), keeps_told=self.scope.is_farm_client)
        offers, why = self._found(asked)
        return {
            "due_from": asked.due_from,
            "due_until": asked.due_until,
            "minutes": asked.minutes,
            "hold_minutes": round(figures_of(farm.scope).planning.hold_minutes),
            "offers": offers,
            "why_not": why,
        }

    def _found(self, asked: Asked) -> tuple[list[Said], list[Said]]:
        if self.scope.is_farm_client:
            return [_for_farm(offer) for offer in client_offers(asked, self.now)], []
        return _for_staff(farm_offers(asked, self.now))

    def _wish(self) -> VisitWish:
        asked, today = self.asked, local_day(self.now, self.seat.business.zone)
        reason = asked.get("reason", VisitReason.URGENT)
        scale, score = asked.get("mobility_scale"), asked.get("mobility_score")
        first, cows = asked.get("due_from", today), asked.get("head_count", 1)
        lame, last = asked.get("corrective_count", 0), asked.get("due_until")
        faults = []
        if (scale is None) != (score is None) or (scale is not None and score not in scale.scores):
            faults.append(("query.mobility_score", "A score goes with a scale that has it."))
        if lame > cows:
            faults.append(("query.corrective_count", "More lame cows than cows: raise the number of cows."))
        if any(day and not FIRST_YEAR <= day.year <= LAST_YEAR for day in (first, last)):
            faults.append(("query.due_from", f"A day from {FIRST_YEAR} to {LAST_YEAR} is meant."))
        if not faults:
            last = last or asked_until(reason, max(first, today), scale, score)
            if last < first:
                faults.append(("query.due_until", "The last day is before the first."))
        if faults or last is None:
            raise CannotBeMeant(faults=faults)
        return VisitWish(reason, self.seat.user.name[:120], first, last, cows, lame, scale, score)


def _for_farm(offer: ClientOffer) -> Said:
    """No other farm's name, no money and no way is in it."""
    known = {"way": "fits", "van": offer.van, "first": offer.first, "last": offer.last}
    unsaid = dict.fromkeys(("after", "work_minutes", "metres", "money", "moved", "put_off"))
    return {**known, **unsaid, "days_late": offer.late, "is_between": offer.is_between}


def _for_staff(found: FarmOffers) -> tuple[list[Said], list[Said]]:
    of_ways: Iterable[Iterable[OfferLine]] = (found.fits, found.moves, found.askings, found.put_offs)
    offers = [_line(way, line) for way, lines in zip(WAYS, of_ways, strict=True) for line in lines]
    return offers, [{"monday": monday, "why": why} for monday, why in found.why]


def _line(way: str, line: OfferLine) -> Said:
    return {
        "way": way,
        "van": line.van.pk,
        "first": line.first,
        "last": line.last,
        "days_late": line.late,
        "is_between": bool(line.after),
        "after": line.after,
        "work_minutes": line.minutes,
        "metres": line.metres,
        "money": line.money,
        "moved": _moved(line.moved, line) if line.moved else None,
        "put_off": line.put_off.pk if line.put_off else None,
    }


def _moved(move: MoveLine, line: OfferLine) -> Said:
    return {
        "visit": move.visit.pk,
        "farm": move.visit.farm.name,
        "van": move.van.pk,
        "start": move.start,
        "to_van": move.to_van.pk,
        "to_day": line.to.day if line.to else None,
        "to_start": move.to_start,
        "is_told": move.told,
    }
