"""The words on a day's ribbon, the same in both directions."""

from trimops.paper.colours import Meaning
from trimops.paper.days import clock, length
from trimops.paper.figures import counted
from visits.documents.day_ribbon_content import DayRibbon, RibbonDrive, RibbonVisit, Span

MEANING_WORDS = {
    Meaning.DONE: "done",
    Meaning.DUE: "due",
    Meaning.URGENT: "urgent",
    Meaning.PLANNED: "planned",
}


def visit_times(visit: RibbonVisit) -> str:
    """ "09:40 to 12:45" """
    return f"{clock(visit.start)} to {clock(visit.finish)}"


def visit_work(visit: RibbonVisit) -> tuple[str, str]:
    """ "28 cows", "hygiene 1" """
    return counted(visit.cows, "cow"), f"hygiene {visit.hygiene}"


def drive_words(drive: RibbonDrive) -> str:
    """ "drive 20 min, 15 km" """
    return f"drive {length(drive.arrive - drive.leave)}, {drive.km:.0f} km"


def span_length(span: Span) -> str:
    """How long a stretch lasts, in words."""
    return length(span[1] - span[0])


def told(day: DayRibbon) -> str:
    """The whole day as one text, for who cannot see the drawing."""
    parts = [(d.leave, f"{clock(d.leave)} {drive_words(d)}") for d in day.drives]
    parts += [
        (v.start, f"{visit_times(v)} {v.name}, {', '.join(visit_work(v))}, {MEANING_WORDS[v.meaning]}")
        for v in day.visits
    ]
    parts += [(s, f"{clock(s)} free {span_length((s, e))}") for s, e in day.idle()]
    if day.meal:
        parts.append((day.meal[0], f"{clock(day.meal[0])} meal {span_length(day.meal)}"))
    return "; ".join(words for _, words in sorted(parts))
