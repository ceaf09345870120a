"""What can be done to a row that the trail keeps."""

from enum import StrEnum


class EntryKind(StrEnum):
    ADDED = "added"
    CHANGED = "changed"
    TAKEN_AWAY = "taken_away"
    HANDED_OUT = "handed_out"

    @property
    def label(self) -> str:
        return self.value.replace("_", " ").capitalize()
