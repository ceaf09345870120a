"""What a farm's first page tells: what is coming, what is theirs to mind, what is the vet's."""

from dataclasses import dataclass
from datetime import date, datetime

from django.db.models import F

from farms.models import Cow
from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import Block, HeldHour, Recheck, Referral, ReferralLetter, Visit
from visits.selectors.open_referrals import open_referrals


@dataclass(frozen=True)
class ToMind:
    """A foot that something is due at: a block that must come off, a look again, or both."""

    cow: Cow
    foot: str
    blocks: tuple[Block, ...]
    rechecks: tuple[Recheck, ...]

    @property
    def due(self) -> date:
        """The first day that must not go by."""
        return min([*(b.off_due for b in self.blocks), *(r.due_until for r in self.rechecks)])


@dataclass(frozen=True)
class FarmToday:
    """`for_vet`: what was seen in the last six weeks at cows that were not at the crush again since; `letters`
    are those of them, by trim, for whom a letter to the vet was issued."""

    coming: list[Visit]
    held: list[HeldHour]
    to_mind: list[ToMind]
    for_vet: list[Referral]
    letters: set[int]
    latest: Visit | None


def farm_today(scope: Scope, now: datetime) -> FarmToday:
    """In a fixed number of queries; of one farm, or of all that the scope sees."""
    visits = Visit.objects.within(scope)
    held = HeldHour.objects.within(scope).in_force(now)
    for_vet = list(open_referrals(scope, now))
    letters = ReferralLetter.objects.within(scope).filter(trim__in=[row.trim_id for row in for_vet])
    return FarmToday(
        coming=list(visits.open().order_by(F("planned_start").asc(nulls_last=True), "due_until")),
        held=list(held.order_by("start")),
        to_mind=_to_mind(scope),
        for_vet=for_vet,
        letters=set(letters.values_list("trim_id", flat=True)),
        latest=visits.in_state(VisitState.FINISHED).order_by("-finished_at").first(),
    )


def _to_mind(scope: Scope) -> list[ToMind]:
    """One line a foot, what is due first before what is due later."""
    blocks = Block.objects.within(scope).filter(off_on__isnull=True).select_related("cow")
    rechecks = Recheck.objects.within(scope).open().select_related("cow")
    feet: dict[tuple[int, str], tuple[list[Block], list[Recheck]]] = {}
    for block in blocks:
        feet.setdefault((block.cow_id, block.foot), ([], []))[0].append(block)
    for recheck in rechecks:
        feet.setdefault((recheck.cow_id, recheck.foot), ([], []))[1].append(recheck)
    lines = [_of_foot(*rows) for rows in feet.values()]
    return sorted(lines, key=lambda line: (line.due, line.cow.number))


def _of_foot(blocks: list[Block], rechecks: list[Recheck]) -> ToMind:
    first: Block | Recheck = blocks[0] if blocks else rechecks[0]
    return ToMind(first.cow, first.get_foot_display(), tuple(blocks), tuple(rechecks))
