"""The words of the cows: one by one where there is something to tell, together where there is not."""

from collections.abc import Iterable
from dataclasses import replace

from trimops.paper.days import day_short
from visits.documents.sole_drawing import SoleMark, SoleView
from visits.documents.visit_report_content import CowLine, FootLine, Found
from visits.documents.visit_report_said import VET_ADVISED, CowSaid, FootSaid, FoundSaid
from visits.domain.feet import Claw

SEVERITY = {1: "slight", 2: "clear", 3: "severe"}


def cow_words(cows: Iterable[CowLine]) -> tuple[CowSaid, ...]:
    """The cows with something to tell, in their order."""
    return tuple(_cow(cow) for cow in cows if not cow.is_plain)


def plain_cow_words(cows: Iterable[CowLine]) -> tuple[str, ...]:
    """ "Functional trim (3): 401, 402, 404", a line for each kind of work."""
    by_work: dict[str, list[str]] = {}
    for cow in cows:
        if cow.is_plain:
            by_work.setdefault(cow.work, []).append(cow.number)
    return tuple(
        f"{_capital(work)} ({len(numbers)}): {', '.join(numbers)}" for work, numbers in by_work.items()
    )


def found_words(found: Found) -> FoundSaid:
    """ "Sole ulcer" + ", clear: outer claw, where sole meets heel (4)"."""
    stage = f", {found.stage}" if found.stage else ""
    severity = f", {SEVERITY[found.severity]}" if found.severity in SEVERITY else ""
    claw = "" if found.claw is Claw.SKIN and found.place else found.claw.label
    place = ", ".join(part for part in (claw, found.place) if part)
    zone = "" if found.zone is None else f" ({found.zone})"
    lesion = _capital(found.lesion)
    return FoundSaid(lesion, f"{stage}{severity}: {place}{zone}", VET_ADVISED if found.for_vet else "")


def sole_of(foot: FootLine) -> SoleView:
    """The foot as it is drawn."""
    marks = tuple(SoleMark(found.claw, found.zone, found.for_vet) for found in foot.found)
    return SoleView(foot.foot, marks, foot.block_on, for_vet=bool(foot.vet))


def _cow(cow: CowLine) -> CowSaid:
    feet = [
        foot for foot in cow.feet if foot.found or foot.block_on or foot.recheck_on or foot.done or foot.vet
    ]
    # A note alone is told with what she had, if there is no note either.
    note = cow.note or ("" if feet else cow.work)
    walked = f"lame, {cow.walked}" if cow.walked else ""
    return CowSaid(cow.number, walked, tuple(_foot(foot) for foot in feet), note)


def _foot(foot: FootLine) -> FootSaid:
    """Why the foot is the vet's is told once, not at each lesion."""
    found = tuple(found_words(each) for each in foot.found)
    return FootSaid(
        foot.foot.label,
        sole_of(foot),
        tuple(replace(said, vet="") for said in found) if foot.vet else found,
        ", ".join(foot.done),
        day_short(foot.recheck_on) if foot.recheck_on else "",
        "; ".join(foot.vet),
    )


def _capital(words: str) -> str:
    """The first letter large, the others as they are ("digital dermatitis M2")."""
    return words[:1].upper() + words[1:]
