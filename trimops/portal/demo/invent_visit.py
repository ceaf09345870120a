"""What is done on one visit of the history, cow by cow."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from random import Random

from trimops.portal.demo.chances import happens
from trimops.portal.demo.demo_files import Rates
from trimops.portal.demo.farm_state import FarmState
from trimops.portal.demo.invent_cow import Seen, recheck_entry, routine_entry
from trimops.portal.demo.invent_lesions import finding, lesions_today
from trimops.portal.demo.past import RecheckSpell
from visits.domain.crush_entry import CowEntry, FindingEntry
from visits.domain.feet import Foot
from visits.domain.lesions import LesionCode
from visits.domain.recheck_due import RecheckCause
from visits.domain.visit_states import VisitReason

CLAW_HORN = (LesionCode.SU, LesionCode.WLA)


@dataclass(frozen=True)
class Errand:
    """Why a farm is gone to on a day: the reason, its due days, the re-checks and the lame cows."""

    reason: VisitReason
    due_from: date
    due_until: date
    rechecks: tuple[RecheckSpell, ...]
    lame: tuple[int, ...]
    heads: int

    @property
    def corrective(self) -> int:
        return len({spell.cow for spell in self.rechecks} | set(self.lame))

    def asked(self) -> tuple[tuple[int, str], ...]:
        """The cows named beforehand, and why."""
        why = {spell.cow: f"{spell.due.foot.label}: {spell.due.what}" for spell in self.rechecks}
        return tuple((why | dict.fromkeys(self.lame, "walks lame")).items())


def errand_for(state: FarmState, day: date) -> Errand | None:
    """What is pressing at the farm on `day`, the most pressing reason first; None when nothing is."""
    rechecks = tuple(state.feet.due_by(day))
    cows = {spell.cow for spell in rechecks}
    lame = tuple(state.lame)
    if lame:
        rung = min(state.lame.values())
        heads = len(cows | set(lame))
        return Errand(VisitReason.URGENT, rung, rung + timedelta(days=2), rechecks, lame, heads)
    slack = timedelta(days=max(2, round(state.sketch.interval_days * 0.1)))
    if state.next_routine - slack <= day:
        wanted = state.not_seen_in_this_round(day) if state.sketch.whole_herd else state.sketch.herd
        heads = max(len(cows), min(state.sketch.routine_cows, wanted))
        first, last = state.next_routine - slack, state.next_routine + slack
        return Errand(VisitReason.ROUTINE, first, last, rechecks, (), heads)
    last = min((spell.due.due_until for spell in rechecks), default=day + timedelta(days=99))
    if last > day + timedelta(days=2):
        return None
    return Errand(
        VisitReason.RECHECK, min(spell.due.due_from for spell in rechecks), last, rechecks, (), len(cows)
    )


def cows_done(
    chance: Random, rates: Rates, state: FarmState, errand: Errand, day: date
) -> list[tuple[int, CowEntry]]:
    """Every cow of the visit with her entry: re-checks, lame cows, then those that were longest away."""
    seen_again = sorted({spell.cow for spell in errand.rechecks})
    done = [(cow, _again(chance, rates, state, errand.rechecks, cow)) for cow in seen_again]
    fresh = [cow for cow in errand.lame if cow not in seen_again]
    if errand.reason is VisitReason.ROUTINE:
        fresh += _longest_away(chance, state, errand.heads - len(seen_again), {*seen_again})
    herd_factor = state.herd_factor * (state.sketch.later if day >= state.turns_on else 1)
    for cow in fresh:
        seen: Seen = lesions_today(chance, rates, state.cows[cow], herd_factor, day)
        if cow in errand.lame and not seen:
            seen = _lame_foot(chance, rates)
        done.append((cow, routine_entry(chance, rates, seen, state.feet.standing(cow))))
        state.cows[cow].seen_on = day
    return done


def _again(
    chance: Random, rates: Rates, state: FarmState, spells: Sequence[RecheckSpell], cow: int
) -> CowEntry:
    mine = [spell for spell in spells if spell.cow == cow]
    seen: dict[Foot, list[FindingEntry]] = {}
    for spell in mine:
        blocked = spell.due.cause is RecheckCause.BLOCK
        if not happens(chance, rates.healed_with_block if blocked else rates.healed_at_recheck):
            place = (spell.due.foot, _what_was_there(chance, state, spell))
            seen[spell.due.foot] = [finding(chance, rates, place, severity=chance.choice((1, 2)))]
    feet = sorted({spell.due.foot for spell in mine})
    return recheck_entry(chance, rates, feet, seen, state.feet.standing(cow))


def _what_was_there(chance: Random, state: FarmState, spell: RecheckSpell) -> LesionCode:
    place = state.cows[spell.cow].sore_place
    if place is not None and place[0] is spell.due.foot:
        return place[1]
    return chance.choice(CLAW_HORN)


def _lame_foot(chance: Random, rates: Rates) -> Seen:
    place = (chance.choice((Foot.LEFT_HIND, Foot.RIGHT_HIND)), chance.choice(CLAW_HORN))
    return {place[0]: [finding(chance, rates, place, severity=2)]}


def _longest_away(chance: Random, state: FarmState, count: int, but: set[int]) -> list[int]:
    """The farm draws out those that were longest away, with some disorder."""
    order = sorted(
        (state.cows[number].seen_on.toordinal() + chance.randrange(60), number)
        for number in state.present()
        if number not in but
    )
    return [number for _, number in order[: max(0, count)]]
