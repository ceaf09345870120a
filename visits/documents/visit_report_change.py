"""What a new version of a report changes against the one before, in words; nothing where what was seen and done is the
same. What lies round the visit (the next one, earlier counts, an address) is not held against it: it is drawn as of the
day on which the version was made.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

from trimops.paper.figures import counted
from visits.documents.visit_report_content import (
    BlockLine,
    CowLine,
    FootLine,
    Found,
    VetReferral,
    VisitReport,
)
from visits.documents.visit_report_words import used_words
from visits.domain.feet import Foot

MOST_WORDS = 12
T = TypeVar("T")


def report_changes(before: VisitReport, after: VisitReport) -> tuple[str, ...]:
    """ "cow 412: sole ulcer added on left hind", "3 blocks on instead of 2": a piece for each thing that differs."""
    return (
        *_cow_changes(before.cows, after.cows),
        *_vet_changes(before.vet, after.vet),
        *_block_changes(before.blocks, after.blocks),
        *_other_changes(before, after),
    )


def change_note(changes: Iterable[str]) -> str:
    """The pieces in one sentence; a long list is cut and says so."""
    pieces = list(changes)
    rest = len(pieces) - MOST_WORDS
    if rest > 0:
        pieces = [*pieces[:MOST_WORDS], f"and {counted(rest, 'more change')}"]
    return "; ".join(pieces)


def _cow_changes(before: tuple[CowLine, ...], after: tuple[CowLine, ...]) -> Iterator[str]:
    old, new = _by_number(before), _by_number(after)
    for number in [*new, *(gone for gone in old if gone not in new)]:
        if number not in old:
            yield f"cow {number} added"
        elif number not in new:
            yield f"cow {number} taken out"
        else:
            yield from (f"cow {number}: {words}" for words in _one_cow(old[number], new[number]))


def _by_number(cows: Iterable[CowLine]) -> dict[str, CowLine]:
    """Two cows of one farm may wear the same number: the second is told apart by a mark."""
    found: dict[str, CowLine] = {}
    for cow in cows:
        number = cow.number
        while number in found:
            number += " (another)"
        found[number] = cow
    return found


def _one_cow(old: CowLine, new: CowLine) -> Iterator[str]:
    feet_before, feet_after = ({foot.foot: foot for foot in cow.feet} for cow in (old, new))
    for foot in Foot:
        blank = FootLine(foot)
        yield from _one_foot(feet_before.get(foot, blank), feet_after.get(foot, blank))
    yield from _instead("", old.work, new.work)
    yield from _instead("lame, ", old.walked or "no", new.walked or "no")
    if old.note != new.note:
        yield f"note “{new.note}”" if new.note else "note taken out"


def _one_foot(old: FootLine, new: FootLine) -> Iterator[str]:
    where = new.foot.label
    yield from _lesion_changes(old.found, new.found, where)
    yield from (f"{where} also: {done}" for done in _more(new.done, old.done) if not _is_block(new, done))
    yield from (f"{where} without: {done}" for done in _more(old.done, new.done) if not _is_block(old, done))
    if old.block_on != new.block_on:
        yield f"block on {where}, {new.block_on.label}" if new.block_on else f"no block on {where}"
    if old.recheck_on != new.recheck_on:
        day = new.recheck_on
        yield f"{where} to be looked at by {day:%-d %b}" if day else f"no need to look at {where} again"


def _is_block(foot: FootLine, done: str) -> bool:
    """A block that went on is told by its claw."""
    return foot.block_on is not None and done.endswith(" on")


def _lesion_changes(before: tuple[Found, ...], after: tuple[Found, ...], where: str) -> Iterator[str]:
    """What is only mended in how bad it is, is told as that and not as a lesion gone and another come."""
    gone, come = _more(before, after), _more(after, before)
    for found in come:
        twin = next((old for old in gone if _place(old) == _place(found)), None)
        if twin is None:
            yield f"{_lesion(found)} added on {where}"
        else:
            gone.remove(twin)
            yield f"{_lesion(found)} on {where}, instead of {_how_bad(twin)}"
    yield from (f"{_lesion(found)} taken out on {where}" for found in gone)


def _place(found: Found) -> tuple[str, str, int | None]:
    return found.lesion, found.claw.value, found.zone


def _lesion(found: Found) -> str:
    zone = "" if found.zone is None else f", zone {found.zone}"
    return f"{found.lesion} ({_how_bad(found)}), {found.claw.label}{zone}"


def _how_bad(found: Found) -> str:
    bad = "how bad not noted" if found.severity is None else f"{found.severity} of 3"
    bad = f"{found.stage}, {bad}" if found.stage else bad
    return f"{bad}, vet advised" if found.for_vet else bad


def _more(here: Iterable[T], there: Iterable[T]) -> list[T]:
    return list((Counter(here) - Counter(there)).elements())


def _vet_changes(before: tuple[VetReferral, ...], after: tuple[VetReferral, ...]) -> Iterator[str]:
    def key(line: VetReferral) -> tuple[object, ...]:
        return line.cow, line.foot, line.seen

    old, new = ({key(line): line for line in lines} for lines in (before, after))
    for line in new.values():
        if key(line) not in old:
            yield f"for the vet: cow {line.cow} added ({line.seen})"
        elif old[key(line)].told != line.told:
            yield f"cow {line.cow}: {_sentence(line.told) or 'nobody is noted as told'}"
    yield from (
        f"for the vet: cow {line.cow} taken out ({line.seen})" for k, line in old.items() if k not in new
    )


def _sentence(words: str) -> str:
    """ "Told J. Marsden 10:20." within a sentence."""
    return words[:1].lower() + words[1:].rstrip(".")


def _block_changes(before: tuple[BlockLine, ...], after: tuple[BlockLine, ...]) -> Iterator[str]:
    if len(before) != len(after):
        yield f"block count {len(after)} instead of {len(before)}"

    def day_of(blocks: Iterable[BlockLine]) -> dict[tuple[object, ...], BlockLine]:
        return {(block.cow, block.foot, block.claw): block for block in blocks}

    old, new = day_of(before), day_of(after)
    for key in new:
        if key in old and old[key].off_by != new[key].off_by:
            yield f"cow {new[key].cow}: block off by {new[key].off_by:%-d %b} instead of {old[key].off_by:%-d %b}"


def _other_changes(before: VisitReport, after: VisitReport) -> Iterator[str]:
    for name, words in _OTHERS.items():
        old, new = words(before), words(after)
        if old != new:
            yield (
                f"{name}: {new or 'nothing'} instead of {old or 'nothing'}" if len(new + old) < 120 else name
            )


_OTHERS: dict[str, Callable[[VisitReport], str]] = {
    "what was used": lambda r: ", ".join(map(used_words, r.consumables)),
    "hygiene": lambda r: ", ".join(f"{s.words}{'' if s.done else ' (not done)'}" for s in r.hygiene_steps),
    "received by": lambda r: ", ".join(signature.name for signature in r.signed),
    "told at the end": lambda r: " ".join((*r.was_done, *r.farm_to_do)),
    "trimmed by": lambda r: ", ".join(r.trimmers),
    "hours": lambda r: " to ".join(f"{at:%H:%M}" for at in (r.started, r.finished) if at),
}


def _instead(name: str, old: str, new: str) -> Iterator[str]:
    if old != new:
        yield f"{name}{new} instead of {old}"
