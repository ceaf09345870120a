"""Cases of one operation: at the bounds of what is described, and at random.

Half of them are schemathesis' own cases at the bounds (its coverage phase: each limit just kept and just broken, each
needed thing missing, each wrong type), chosen by chance where there are more. The other half comes from draws at
random, each of which gives several cases: what is spoilt in a case stays with what it was drawn with, and its sound
parts (path, query, headers, body) are exchanged for the sound ones of another draw.
"""

import random
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from typing import Any
from zlib import crc32

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st
from hypothesis.internal.conjecture.providers import AVAILABLE_PROVIDERS, HypothesisProvider
from schemathesis import Case, GenerationMode
from schemathesis.core.parameters import ParameterLocation
from schemathesis.generation.meta import CaseMetadata, ComponentInfo, GenerationInfo

from tests.standards.api.described import WORDY, Described

# Of each drawn case so many are made.
FROM_ONE = 3
# Of so many times as many cases at the bounds the wanted are chosen: of a wide body there are hundreds.
CHOICE = 3
CONTAINERS = {
    ParameterLocation.PATH: "path_parameters",
    ParameterLocation.QUERY: "query",
    ParameterLocation.HEADER: "headers",
    ParameterLocation.COOKIE: "cookies",
    ParameterLocation.BODY: "body",
}


class WithoutConstants(HypothesisProvider):
    """Draws as Hypothesis does, but looks for no constants in our code: that took a third of all the drawing."""

    def _maybe_draw_constant(self, *_: Any, **__: Any) -> None:
        return None


AVAILABLE_PROVIDERS["without-constants"] = WithoutConstants


def cases(said: Described, name: str, count: int, turn: int) -> Iterator[Case]:
    """`count` cases or a little more; the same for the same `turn`, and each turn has others at the bounds."""
    half = count // 2
    number = crc32(name.encode())
    bounds = at_the_bounds(said.brief[name], half * CHOICE, random.Random(number))
    bounds = bounds[turn * half : (turn + 1) * half]
    dice = random.Random(number + turn)
    found = [*bounds, *at_random(said.whole[name], count - len(bounds), number + turn, dice)]
    dice.shuffle(found)
    yield from found


def at_the_bounds(operation: Any, most: int, dice: random.Random) -> list[Case]:
    told = operation.schema.iter_coverage_cases(
        operation=operation,
        generation_modes=list(GenerationMode),
        generation_config=operation.schema.config.generation_for(operation=operation, phase="coverage"),
    )
    found = [case for case in islice(told, most) if not _is_of_brevity(case)]
    dice.shuffle(found)
    return found


def at_random(operation: Any, count: int, number: int, dice: random.Random) -> list[Case]:
    drawn = _drawn(operation, -(-count // FROM_ONE), number)
    mixed = [*drawn]
    while len(mixed) < count:
        mixed.append(_mixed(dice.choice(drawn), dice.choice(drawn), dice))
    return mixed


def _drawn(operation: Any, count: int, number: int) -> list[Case]:
    found: list[Case] = []

    @seed(number)
    @settings(
        max_examples=count,
        phases=[Phase.generate],
        database=None,
        deadline=None,
        suppress_health_check=list(HealthCheck),
        backend="without-constants",
    )
    @given(case=st.one_of(*(operation.as_strategy(generation_mode=mode) for mode in GenerationMode)))
    def each(case: Case) -> None:
        found.append(case)

    each()
    return found


def _mixed(base: Case, other: Case, dice: random.Random) -> Case:
    """What is spoilt in `base` stays; what is sound may come from `other`, where it is sound there."""
    assert base.meta is not None
    said = {part: getattr(base, part) for part in CONTAINERS.values()}
    media = base.media_type
    for place, part in CONTAINERS.items():
        if is_sound(base, place) and is_sound(other, place) and dice.random() < 0.5:
            said[part] = getattr(other, part)
            media = other.media_type if place is ParameterLocation.BODY else media
    copies = {part: each.copy() if hasattr(each, "copy") else each for part, each in said.items()}
    return Case(base.operation, base.method, base.path, media_type=media, meta=_meta_of(base.meta), **copies)


def _meta_of(meta: CaseMetadata) -> CaseMetadata:
    modes = {place: ComponentInfo(mode=each.mode) for place, each in meta.components.items()}
    told = GenerationInfo(time=meta.generation.time, mode=meta.generation.mode)
    return CaseMetadata(generation=told, components=modes, phase=replace(meta.phase))


def is_sound(case: Case, place: ParameterLocation) -> bool:
    told = case.meta.components.get(place) if case.meta else None
    return told is None or told.mode == GenerationMode.POSITIVE


def _is_of_brevity(case: Case) -> bool:
    """Whether it breaks only what is said of `fields` in brief; the real bounds are tried at random."""
    assert case.meta is not None
    return case.meta.generation.mode.is_negative and getattr(case.meta.phase.data, "parameter", "") == WORDY
