"""One reason as one plain sentence, or two."""

from visits.domain.planning.reasons.names import Names, told
from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.say_room import ROOM_SAYINGS
from visits.domain.planning.reasons.say_stop import STOP_SAYINGS
from visits.domain.planning.reasons.say_week import WEEK_SAYINGS

SAYINGS = {**STOP_SAYINGS, **ROOM_SAYINGS, **WEEK_SAYINGS}
PLAIN = Names()


def say_reason(reason: Reason, names: Names = PLAIN) -> str:
    """The sentence of `reason`, with names for ids. KeyError for a code without a saying or a figure missing."""
    sentence = SAYINGS[reason.code](told(reason, names))
    return sentence[0].upper() + sentence[1:]
