"""The knives and discs of the van as the phone at the crush must know them."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from trimops.kernel.scope import Scope
from visits.domain.kit.blade_kinds import BladeKind, BladeState, Hand, TurnPart
from visits.domain.kit.blade_life import BladeWord, blade_standing
from visits.domain.kit.edge_life import made_how
from visits.domain.kit.edge_lives import BladeLog, Edge, edges_of
from visits.domain.kit.edge_log import Turn, last_in_hand
from visits.domain.kit.edge_outlook import edge_outlook
from visits.domain.kit.kit_figures import KitFigures
from visits.models import Blade, Visit
from visits.selectors.kit.van_edges import KnownEdges, known_edges

KINDS, HANDS = list(BladeKind), list(Hand)


def crush_blades(scope: Scope, visit: Visit, now: datetime, figures: KitFigures) -> list[dict[str, object]]:
    """The van's blades that may cut, those in hand when the visit began, those that were named on it. Six queries.

    All of it leaves out what this visit says, which the phone counts itself. `cows_on_edge`: since `edge_since`;
    `is_dull`: that edge has ended; `counted_on`: cows by which half of such edges are dull, or the business's own
    figure. (The grinding plan counts on fewer, so that a day holds; at the crush that would be a word at every edge.)
    """
    known = known_edges(scope, now, figures)
    others = [turn for turn in known.logs.turns if turn.visit != visit.pk]
    mine = [turn for turn in known.logs.turns if turn.visit == visit.pk]
    held = last_in_hand(others, visit.van_id, visit.started_at or now) if visit.van_id else frozenset()
    named = held.union(*(_blades(turn) for turn in mine))
    found = [_before(known, blade, visit) for blade in known.logs.blades if _is_near(blade, visit, named)]
    wanted = [each for each in found if each.blade.pk in named or each.state.may_cut]
    return [_paper(known, each, is_in_hand=each.blade.pk in held) for each in sorted(wanted, key=_place)]


@dataclass(frozen=True)
class _Before:
    """A blade as it stands without this visit."""

    blade: Blade
    edge: Edge
    state: BladeState


def _before(known: KnownEdges, blade: Blade, visit: Visit) -> _Before:
    log = known.logs.logs[blade.pk]
    log = replace(log, turns=tuple(turn for turn in log.turns if turn.visit != visit.pk))
    cows = [cow for cow in known.logs.cows.get(blade.pk, ()) if cow.visit != visit.pk]
    broken = known.logs.broken_before.get(blade.pk, ())
    return _Before(blade, edges_of(log, cows)[-1], _state(log, broken))


def _state(log: BladeLog, broken_before: Sequence[BladeWord]) -> BladeState:
    """As `settle_blade` has it, from this log and what was said broken before it begins."""
    said = [
        BladeWord(turn.at, part) for turn in log.turns for part, blades in _parts(turn) if log.blade in blades
    ]
    sharpened = [BladeWord(one.at, None) for one in log.sharpened]
    return blade_standing([*log.words, *broken_before, *said, *sharpened], log.known_since).state


def _parts(turn: Turn) -> list[tuple[TurnPart, frozenset[int]]]:
    return [
        (TurnPart.IN_HAND, turn.in_hand),
        (TurnPart.WENT_DULL, turn.went_dull),
        (TurnPart.CRACKED, turn.cracked),
        (TurnPart.CHIPPED, turn.chipped),
    ]


def _blades(turn: Turn) -> frozenset[int]:
    return turn.in_hand | turn.went_dull | turn.cracked | turn.chipped


def _is_near(blade: Blade, visit: Visit, named: frozenset[int]) -> bool:
    return blade.pk in named or blade.van_id == visit.van_id


def _place(before: _Before) -> tuple[int, int, str]:
    """Knives first, right hand before left."""
    kind, hand = BladeKind(before.blade.kind), Hand(before.blade.hand)
    return KINDS.index(kind), HANDS.index(hand), before.blade.name


def _paper(known: KnownEdges, before: _Before, *, is_in_hand: bool) -> dict[str, object]:
    blade, edge = before.blade, before.edge
    kind, hand = BladeKind(blade.kind), Hand(blade.hand)
    life = known.lives.of(blade.pk, kind, made_how(edge))
    outlook = edge_outlook(life, edge.cows, known.limit)
    return {
        "id": blade.pk,
        "name": blade.name,
        "kind": kind.value,
        "kind_label": kind.label,
        "is_turned": kind.is_turned,
        "hand": hand.value,
        "hand_label": hand.label,
        "cows_on_edge": edge.cows,
        "edge_since": edge.begun_at.isoformat(),
        "is_dull": edge.is_over,
        "is_in_hand": is_in_hand,
        "may_cut": before.state.may_cut,
        "counted_on": max(1, outlook.cows + outlook.middle),
    }
