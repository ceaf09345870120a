"""The words of the mail that carries an invitation, for who reads it without a calendar."""

from dataclasses import dataclass
from datetime import datetime
from zoneinfo import ZoneInfo

from trimops.paper.days import clock, day_long, day_short


@dataclass(frozen=True)
class InvitationFacts:
    """What the mail tells. Instants aware; `before` is the hour that the reader was told last, None for the first."""

    business: str
    phone: str
    farm: str
    trimmer: str
    start: datetime
    end: datetime
    zone: str
    is_confirmed: bool = True
    before: datetime | None = None
    is_off: bool = False


def invitation_subject(facts: InvitationFacts) -> str:
    """One line: what is new, the day and the hour."""
    start = facts.start.astimezone(ZoneInfo(facts.zone))
    what = f"foot trimming at {facts.farm}, {day_short(start)} {clock(start)}"
    if facts.is_off:
        return f"Called off: {what}"
    if facts.before is None or facts.before == facts.start:
        return what[0].upper() + what[1:]
    return f"New hour: {what}"


def invitation_text(facts: InvitationFacts) -> str:
    """A few short lines."""
    zone = ZoneInfo(facts.zone)
    start, end = facts.start.astimezone(zone), facts.end.astimezone(zone)
    when = f"{day_long(start)}, {clock(start)} to {clock(end)}"
    ring = f", or ring {facts.phone}" if facts.phone else ""
    lines = [f"{when}: foot trimming at {facts.farm}.", ""]
    if facts.is_off:
        lines += ["This visit does not take place at that hour. Your calendar can take it out.", ""]
    else:
        if facts.trimmer:
            lines.append(f"{facts.trimmer} comes.")
        if facts.before is not None and facts.before != facts.start:
            told = facts.before.astimezone(zone)
            lines.append(f"Before it was {day_long(told)}, {clock(told)}.")
        if not facts.is_confirmed:
            lines.append("The hour is planned and not settled yet.")
        lines += ["Your calendar can take it over from this mail.", ""]
    lines += [f"If this does not suit, answer this mail{ring}.", facts.business]
    return "\n".join(lines) + "\n"
