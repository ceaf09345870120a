"""When a blade was not at work, by the words of persons: at grinding, out of use, retired.

What is noted as in hand then is only the default that nobody changed, so those cows are not its own. From grinding a
blade is back when it is sharpened, taken in hand at the crush, or said to be in use; from the others only when it is
said to be in use.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from visits.domain.kit.blade_kinds import BladeState
from visits.domain.kit.blade_life import BladeWord

_AWAY = (BladeState.AT_GRINDING, BladeState.OUT_OF_USE, BladeState.RETIRED)


@dataclass(frozen=True)
class Away:
    """Not at work from `since` up to `until` (None: to this day), because it was said to be in `state`."""

    state: BladeState
    since: datetime
    until: datetime | None = None

    def holds(self, at: datetime) -> bool:
        """Whether it was away at that moment."""
        return self.since <= at and (self.until is None or at < self.until)


def away_spans(words: Iterable[BladeWord], back: Iterable[datetime]) -> tuple[Away, ...]:
    """The spans in order of time. `back`: when it was sharpened, or taken in hand by a turn that says so."""
    found: list[Away] = []
    since: tuple[BladeState, datetime] | None = None
    for word in sorted(words, key=lambda word: word.at):
        if not isinstance(word.says, BladeState):
            continue
        if since is not None:
            found.append(Away(*since, word.at))
        since = (word.says, word.at) if word.says in _AWAY else None
    if since is not None:
        found.append(Away(*since))
    moments = sorted(back)
    return tuple(_back_sooner(span, moments) for span in found)


def _back_sooner(span: Away, moments: Sequence[datetime]) -> Away:
    if span.state is not BladeState.AT_GRINDING:
        return span
    first = next((at for at in moments if at > span.since), None)
    if first is None or (span.until is not None and first > span.until):
        return span
    return Away(span.state, span.since, first)
