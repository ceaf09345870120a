"""What a reminder says at each step: plain, polite, firmer; it never threatens."""

from invoicing.documents.reminder_content import ReminderContent
from trimops.paper.days import day_plain, day_short_year
from trimops.paper.figures import counted, money

PAID_ALREADY = "If you have paid already, thank you: please take no notice of this letter."
_MARKS = {1: "Reminder", 2: "Second reminder", 3: "Third reminder"}


def reminder_mark(step: int) -> str:
    """ "Reminder", "Second reminder", "Third reminder", then "Reminder 4"; ValueError below 1"""
    if step < 1:
        raise ValueError("reminders are counted from 1")
    return _MARKS.get(step, f"Reminder {step}")


def reminder_title(content: ReminderContent) -> str:
    """The answer first: "Invoice INV-2026-0042: £520.89 due since 1 Jan 2027"."""
    open_amount = money(content.open_amount, content.currency, content.digits)
    return f"Invoice {content.number}: {open_amount} due since {day_short_year(content.due_on)}"


def reminder_words(content: ReminderContent) -> tuple[str, ...]:
    """The paragraphs above the figures."""
    due = day_plain(content.due_on)
    late = counted((content.day - content.due_on).days, "day")
    said = {
        1: f"This invoice was due on {due}, and we have not seen the payment yet. It may have slipped through: "
        "please have a look.",
        2: f"This invoice was due on {due}, {late} ago, and it is still open although we wrote to you before. Please "
        "pay it now. If something about it is not right, tell us, and we will put it right.",
    }
    firmest = (
        f"This invoice was due on {due}, {late} ago. We have reminded you {_times(content.step - 1)} and have seen no "
        "payment in full. Please pay what is open now, or ring us this week so that we can agree how it will be paid."
    )
    return said.get(content.step, firmest), PAID_ALREADY


def ask_words(content: ReminderContent) -> str:
    """Whom to ring or write to; empty when the business gave neither."""
    business = content.business
    whom = content.ask if content.ask not in ("", business.phone, business.email) else business.name
    ring = f"ring {whom} on {business.phone}" if business.phone else ""
    write = f"write to {business.email}" if business.email else ""
    ways = " or ".join(way for way in (ring, write) if way)
    return f"Questions? Please {ways}." if ways else ""


def _times(number: int) -> str:
    return {1: "once", 2: "twice"}.get(number, f"{number} times")
