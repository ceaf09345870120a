"""Where an errand stands."""

from enum import StrEnum


class ErrandState(StrEnum):
    """`UNDER_WAY`: somebody has it, or had it and died. `STUCK`: tried in vain, a person must look at it."""

    WAITING = "waiting"
    UNDER_WAY = "under_way"
    DONE = "done"
    STUCK = "stuck"

    @property
    def label(self) -> str:
        return {"waiting": "Waiting", "under_way": "Under way", "done": "Done", "stuck": "Stuck"}[self.value]
