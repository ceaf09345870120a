"""What a backup asks of a database, whichever it is."""

from pathlib import Path
from typing import Protocol

from trimops.backup.contents import Contents


class Store(Protocol):
    """A database that can be taken down to one file, and be made anew from it."""

    @property
    def engine(self) -> str:
        """As the manifest names it."""
        ...

    @property
    def dump_name(self) -> str:
        """Of the file in the backup."""
        ...

    def size(self) -> int:
        """About how many bytes a dump takes at most."""
        ...

    def dumped_by(self) -> str:
        """The version of what writes the dump."""
        ...

    def take(self, dump: Path) -> Contents:
        """Write the database as of one moment to the new file `dump` while others go on writing; what it held then."""
        ...

    def try_out(self, dump: Path, told: Contents) -> list[str]:
        """Make it anew in an empty place that is gone afterwards; where that is not what was `told`, in words."""
        ...

    def refuse_unless_empty(self) -> None:
        """NotEmpty where the database holds anything."""
        ...

    def load(self, dump: Path, told: Contents) -> None:
        """Fill the empty database. All or nothing; FaultyBackup where it would not be what was `told`."""
        ...
