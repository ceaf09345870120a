"""What the apps above have to say about the messages of a topic. Filled by their `tasks.py`: `load_tasks` first."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from trimops.outbox.domain.outgoing_states import Topic
from trimops.outbox.models import Outgoing


@dataclass(frozen=True)
class Owner:
    """`renew`: a new secret for a message that is tried again, empty where it carries none. `never_went`: nobody can
    have this message and its secret; called inside the transaction that says so. Both are handed an aware instant."""

    renew: Callable[[Outgoing, datetime], str]
    never_went: Callable[[Outgoing, datetime], object]


OWNERS: dict[Topic, Owner] = {}
