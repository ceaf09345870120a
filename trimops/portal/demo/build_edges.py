"""The knives of the vans over the history: in hand from visit to visit, gone dull at some cow, sharpened at night."""

from datetime import datetime, timedelta
from itertools import groupby
from random import Random
from uuid import UUID

from trimops.accounts.models import User
from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.demo_people import EdgeSketch, Kit
from trimops.portal.demo.past import PastVisit, SeenKey
from visits.domain.kit.blade_kinds import BladeKind, BladeState, EdgeBefore, EdgeFelt, TurnPart
from visits.models import Blade, BladeSaid, BladeTurn, Sharpening, Trim, Visit

BATCH = 900
GRITS = {"belt": 240, "stone": 400, "sent_away": 600}
FELT = (EdgeFelt.VERY_SHARP, EdgeFelt.SHARP, EdgeFelt.SHARP, EdgeFelt.FAIR)


def build_blades(crew: Crew, kit: Kit, since: datetime) -> list[Blade]:
    """The same set of blades in each van, bought before the history begins."""
    rows = [
        Blade(
            business=crew.business,
            van=van,
            bought_on=since.date(),
            state=BladeState.IN_USE,
            state_since=since,
            **words,
        )
        for van in crew.vans
        for words in kit.knives
    ]
    return Blade.objects.bulk_create(rows)


class EdgeKeeper:
    """One van's knives of the right hand, worked with one after the other; an edge lasts as long as chance has it."""

    def __init__(self, trimmer: User, blades: list[Blade], edges: EdgeSketch, chance: Random) -> None:
        self.blades = [
            blade for blade in blades if blade.kind == BladeKind.HOOF_KNIFE and blade.hand == "right"
        ]
        self.discs = [blade for blade in blades if blade.kind == BladeKind.GRINDER_DISC]
        self.trimmer, self.edges, self.chance = trimmer, edges, chance
        self.turns: list[BladeTurn] = []
        self.said: list[BladeSaid] = []
        self.sharpenings: list[Sharpening] = []
        self.left = {blade.pk: self._life("stone") for blade in self.blades}
        self.done = dict.fromkeys(self.left, 0)
        self.at_hand = 0

    def work(self, visit: Visit, trims: list[Trim]) -> None:
        """One visit: take the knife in hand, change when it goes dull."""
        if not trims:
            return
        self._turn(visit, trims[0].recorded_at - timedelta(minutes=6), [])
        for trim in trims:
            blade = self.blades[self.at_hand]
            self.left[blade.pk] -= 1
            self.done[blade.pk] += 1
            if self.left[blade.pk] <= 0 and trim is not trims[-1]:
                self.at_hand = (self.at_hand + 1) % len(self.blades)
                self._turn(visit, trim.recorded_at + timedelta(minutes=1), [blade])

    def evening(self, last: datetime) -> None:
        """After the last cow of a day: what is dull is sharpened, and some that are long in use."""
        self._sharpen(last)

    def save(self) -> None:
        BladeTurn.objects.bulk_create(self.turns, batch_size=BATCH)
        BladeSaid.objects.bulk_create(self.said, batch_size=BATCH)
        Sharpening.objects.bulk_create(self.sharpenings, batch_size=BATCH)

    def _turn(self, visit: Visit, at: datetime, dull: list[Blade]) -> None:
        record = UUID(int=self.chance.getrandbits(128), version=4)
        turn = BladeTurn(business_id=visit.business_id, visit=visit, record=record, at=at)
        turn.by = self.trimmer
        self.turns.append(turn)
        parts = [
            (self.blades[self.at_hand], TurnPart.IN_HAND),
            *((disc, TurnPart.IN_HAND) for disc in self.discs),
            *((blade, TurnPart.WENT_DULL) for blade in dull),
        ]
        for blade, part in parts:
            self.said.append(BladeSaid(business_id=visit.business_id, turn=turn, blade=blade, part=part))

    def _sharpen(self, last: datetime) -> None:
        for number, blade in enumerate(self.blades):
            is_dull = self.left[blade.pk] <= 0
            # Some are touched up before they drag: for the figures that edge was still cutting.
            is_early = self.done[blade.pk] >= 12 and self.chance.random() < self.edges.still_cut / 3
            if not (is_dull or is_early):
                continue
            methods = list(self.edges.methods)
            (method,) = self.chance.choices(methods, weights=[self.edges.methods[name] for name in methods])
            self.sharpenings.append(self._sharpening(blade, last, method, is_dull=is_dull))
            self.left[blade.pk], self.done[blade.pk] = self._life(method), 0
            if number == self.at_hand and is_dull:
                self.at_hand = (self.at_hand + 1) % len(self.blades)

    def _sharpening(self, blade: Blade, last: datetime, method: str, *, is_dull: bool) -> Sharpening:
        return Sharpening(
            business_id=blade.business_id,
            blade=blade,
            at=last.replace(hour=19, minute=0, second=0),
            method=method,
            grit=GRITS[method],
            angle=blade.edge_angle,
            minutes=self.chance.choice((4, 5, 6, 8)),
            done_by="Sent away" if method == "sent_away" else self.trimmer.name,
            felt=self.chance.choice(FELT),
            before=EdgeBefore.DULL if is_dull else EdgeBefore.STILL_CUT,
        )

    def _life(self, method: str) -> int:
        return max(3, round(self.chance.weibullvariate(self.edges.cows[method], self.edges.shape)))


def build_edges(
    crew: Crew,
    kit: Kit,
    blades: list[Blade],
    past: list[PastVisit],
    rows: tuple[list[Visit], dict[SeenKey, Trim]],
    chance: Random,
) -> None:
    """`rows`: the stored visits in the order of `past`, and the trims by visit and cow."""
    visits, trims = rows
    for number, van in enumerate(crew.vans):
        keeper = EdgeKeeper(
            van.trimmer, [blade for blade in blades if blade.van_id == van.pk], kit.edges, chance
        )
        mine = [(at, visit) for at, visit in enumerate(past) if visit.van == number and visit.is_done]
        made = [(at, visit) for at, visit in mine if not visit.is_called_off and visit.cows]
        for _, day in groupby(
            sorted(made, key=lambda pair: pair[1].start), key=lambda pair: pair[1].start.date()
        ):
            last = None
            for at, visit in day:
                seen = sorted((trims[at, cow.cow] for cow in visit.cows), key=lambda trim: trim.recorded_at)
                keeper.work(visits[at], seen)
                last = seen[-1].recorded_at
            if last is not None:
                keeper.evening(last)
        keeper.save()
