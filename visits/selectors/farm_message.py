"""A message for a farm whose hour changes: drafted for whoever is to send it, with the addresses at hand."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from farms.models import Contact
from trimops.accounts.models import Business
from visits.domain.change_message import HourNews, change_message, mail_address, sms_address
from visits.domain.planning.compare_plans import Change, VisitChange
from visits.domain.planning.replan.stored_change import StoredChange
from visits.domain.visit_states import VisitState
from visits.models import Visit

SAME_HOUR = timedelta(minutes=1)


@dataclass(frozen=True)
class DraftMessage:
    """The text, whom it is for, and links that open the phone's or desk's own program ("" where no address is known).

    `is_told` says that the farm has been told this very hour since.
    """

    text: str
    to: str
    phone: str
    sms: str
    mail: str
    is_told: bool


Row = tuple[VisitChange, datetime | None, StoredChange]
"""What becomes of the visit, the hour its farm counts on (None: it knows of none), and the change as stored."""


def draft_message(
    business: Business, visit: Visit, contacts: Sequence[Contact], row: Row
) -> DraftMessage | None:
    """None where the farm has nothing to be told: its hour stays, or it never knew of the one that goes."""
    changed, told, change = row
    now = changed.after.start if changed.after else None
    off = visit.visit_state is VisitState.CALLED_OFF
    is_done = changed.change is Change.GONE and not off
    if is_done or not _is_news(changed, told):
        return None
    contact = next((each for each in contacts if each.farm_id == visit.farm_id and each.phone), None)
    text = change_message(
        HourNews(
            farm=visit.farm.name,
            business=business.name,
            before=told,
            now=now,
            greet=contact.name if contact else "",
            because="" if off or told is None else change.to_farms,
            is_off=off,
        )
    )
    phone = contact.phone if contact else visit.farm.phone
    email = (contact.email if contact else "") or visit.farm.email
    subject = f"Foot trimming at {visit.farm.name}"
    return DraftMessage(
        text=text,
        to=str(contact) if contact else visit.farm.name,
        phone=phone,
        sms=sms_address(phone, text),
        mail=mail_address(email, subject, text),
        is_told=now is not None and visit.hour_told == now,
    )


def _is_news(changed: VisitChange, told: datetime | None) -> bool:
    """Whether the farm's hour is another than the one it counts on, or than the one in the diary before."""
    if changed.after is None:
        return told is not None
    if told is not None:
        return abs(changed.after.start - told) >= SAME_HOUR
    return changed.before is None or abs(changed.after.start - changed.before.start) >= SAME_HOUR
