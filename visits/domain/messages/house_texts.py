"""The texts that go where a business has not written its own. English; its own come first in each language.

An SMS keeps to the letters of GSM 03.38, so that 160 fit into one and two are enough with names of usual length.
"""

from dataclasses import dataclass, fields
from typing import Literal

from visits.domain.messages.message_kinds import MessageKind

TextPart = Literal["subject", "body", "short"]


@dataclass(frozen=True)
class HouseText:
    """Subject and body of a mail, `short` for an SMS; each with places."""

    subject: str
    body: str
    short: str

    def part(self, name: TextPart) -> str:
        found: str = getattr(self, name)
        return found


PARTS: tuple[TextPart, ...] = tuple(field.name for field in fields(HouseText))  # type: ignore[misc]
_END = "\n\nIf that does not suit, ring us.\n\n{business} {phone}"
HOUSE_TEXTS = {
    MessageKind.BOOKED: HouseText(
        "Foot trimming at {farm}, {day}, {hour}",
        "Hello,\n\nwe come to {farm} for the foot trimming on {day} at {hour}. Cows: {cows}." + _END,
        "Foot trimming at {farm}: {day}, {hour}. Cows: {cows}. {business} {phone}",
    ),
    MessageKind.MOVED: HouseText(
        "Foot trimming at {farm} moved: {day}, {hour}",
        "Hello,\n\nthe foot trimming at {farm} has moved. New: {day} at {hour}. It was: {before}." + _END,
        "Foot trimming at {farm} has moved. New: {day}, {hour}. Was: {before}. {business} {phone}",
    ),
    MessageKind.PUT_OFF: HouseText(
        "Foot trimming at {farm} put off",
        "Hello,\n\nwe cannot come to {farm} on {day} at {hour}. We are looking for another day and tell you."
        "\n\n{business} {phone}",
        "We cannot come to {farm} on {day}, {hour}. We are looking for another day. {business} {phone}",
    ),
    MessageKind.CALLED_OFF: HouseText(
        "Foot trimming at {farm} called off",
        "Hello,\n\nthe foot trimming at {farm} on {day} at {hour} is called off.\n\n{business} {phone}",
        "Foot trimming at {farm} on {day}, {hour} is called off. {business} {phone}",
    ),
    MessageKind.TOMORROW: HouseText(
        "Tomorrow between {from} and {until}: foot trimming at {farm}",
        "Hello,\n\n{trimmer} comes to {farm} tomorrow, {day}, for the foot trimming: likely between {from} and "
        "{until}. Cows to bring: {cows}.\n\n{list}\n\nThe list for the wall is attached.\n\n{business} {phone}",
        "Tomorrow, {day}: foot trimming at {farm}, likely {from} to {until}. Cows to bring: {cows}. List: {link} "
        "{business} {phone}",
    ),
    MessageKind.ON_THE_WAY: HouseText(
        "On the way to {farm}",
        "Hello,\n\n{trimmer} is on the way to {farm} and arrives likely between {from} and {until}."
        "\n\n{business} {phone}",
        "{trimmer} is on the way to {farm}, there likely between {from} and {until}. {business} {phone}",
    ),
    MessageKind.LATE: HouseText(
        "Later today at {farm}",
        "Hello,\n\nwe are running late. We come to {farm} likely between {from} and {until}, some {minutes} minutes "
        "later than told.\n\n{business} {phone}",
        "Running late: at {farm} likely between {from} and {until}. {business} {phone}",
    ),
    MessageKind.REPORT: HouseText(
        "Visit report: {farm}, {day}",
        "{report}\n\n{link}\n\n{business} {phone}",
        "",  # because: a report goes by mail alone
    ),
}
