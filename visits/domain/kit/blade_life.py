"""Where a blade stands, told from all that was ever said of it, in whatever order it was heard.

What was said last holds, with two exceptions for safety. A blade that was said cracked, chipped, bent or loose stays
out of use until a person says of that very fault that it was put right: it is not brought back by being taken in hand
again, by a sharpening, or by a plain "in use" of somebody who knew nothing of it. And a retired blade that turns up in
a hand stays retired. Of two words of one moment the more careful one holds.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from visits.domain.kit.blade_kinds import BladeFault, BladeState, TurnPart

SHARPENED = "sharpened"
_CARE = (
    TurnPart.IN_HAND.value,
    SHARPENED,
    BladeState.BOUGHT.value,
    BladeState.IN_USE.value,
    BladeState.AT_GRINDING.value,
    BladeState.OUT_OF_USE.value,
    TurnPart.CHIPPED.value,
    TurnPart.CRACKED.value,
    BladeState.RETIRED.value,
)
_FAULT_SAID = {TurnPart.CRACKED: BladeFault.CRACKED, TurnPart.CHIPPED: BladeFault.CHIPPED}


@dataclass(frozen=True)
class BladeWord:
    """Something said of a blade at an aware moment: a person's word (BladeState), at the crush (TurnPart), or None: it
    was sharpened. `fault` is why it goes out of use; with IN_USE, the fault that was put right (WORN: a new one is in
    its place).
    """

    at: datetime
    says: BladeState | TurnPart | None
    fault: BladeFault | None = None


@dataclass(frozen=True)
class Standing:
    """A blade's state, since when, why it is out of use; `open_faults` are the dangers nobody has put right."""

    state: BladeState
    since: datetime
    fault: BladeFault | None = None
    open_faults: frozenset[BladeFault] = frozenset()


def blade_standing(words: Iterable[BladeWord], bought_at: datetime) -> Standing:
    """Where the blade stands after all the words, in any order; without one it is as it was bought."""
    found = Standing(BladeState.BOUGHT, bought_at)
    for word in sorted(words, key=lambda word: (word.at, _care(word), word.fault or "")):
        after = _after(found, word)
        is_same = (after.state, after.fault) == (found.state, found.fault)
        since = found.since if is_same else word.at
        found = Standing(after.state, since, after.fault, after.open_faults)
    return found


def _care(word: BladeWord) -> int:
    name = SHARPENED if word.says is None else word.says.value
    return _CARE.index(name) if name in _CARE else -1


def _after(now: Standing, word: BladeWord) -> Standing:
    if isinstance(word.says, BladeState):
        return _by_person(now, word, word.says)
    if word.says is not None and word.says.is_out:
        fault = _FAULT_SAID[word.says]
        faults = now.open_faults | {fault}
        if now.state is BladeState.RETIRED:
            return Standing(now.state, now.since, now.fault, faults)
        return Standing(BladeState.OUT_OF_USE, word.at, fault, faults)
    back_at_work = {
        None: (BladeState.AT_GRINDING,),
        TurnPart.IN_HAND: (BladeState.BOUGHT, BladeState.AT_GRINDING),
    }
    if now.state in back_at_work.get(word.says, ()):
        return _in_use(now, word.at)
    return now


def _by_person(now: Standing, word: BladeWord, state: BladeState) -> Standing:
    if state is BladeState.IN_USE:
        put_right = {word.fault} if word.fault else set()
        return _in_use(Standing(now.state, now.since, now.fault, now.open_faults - put_right), word.at)
    faults = now.open_faults
    if state is BladeState.OUT_OF_USE and word.fault and word.fault.is_danger:
        faults |= {word.fault}
    return Standing(state, word.at, word.fault or _open_fault(now, faults), faults)


def _in_use(now: Standing, at: datetime) -> Standing:
    if now.open_faults:
        return Standing(BladeState.OUT_OF_USE, at, _open_fault(now, now.open_faults), now.open_faults)
    return Standing(BladeState.IN_USE, at)


def _open_fault(now: Standing, faults: frozenset[BladeFault]) -> BladeFault | None:
    return now.fault if now.fault in faults else min(faults, default=None)
