from enum import StrEnum


class TravelSource(StrEnum):
    """Where the figures of a drive come from."""

    ESTIMATE = "estimate"
    SERVER = "server"
    LOCAL = "local"

    @property
    def label(self) -> str:
        return {
            TravelSource.ESTIMATE: "estimate",
            TravelSource.SERVER: "roads server",
            TravelSource.LOCAL: "road map on this machine",
        }[self]

    @property
    def mark(self) -> str:
        """One letter, to write down the source of each drive of a table: e, s or l."""
        return self.value[0]
