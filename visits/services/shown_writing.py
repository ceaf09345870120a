"""The writing of a thing that shows."""

from dataclasses import dataclass
from datetime import datetime

from visits.domain.crush_writing import WritingKind
from visits.domain.read_content import read_content
from visits.domain.writing_content import Content
from visits.models import CrushWriting


@dataclass(frozen=True)
class ShownWriting:
    """The writing that shows of one thing, when it counts as made, and how many versions there are.

    `begun`: when the thing was first put down: a cow was in the crush then, whenever her words were changed since.
    `noted_at`: when the sending came in by which it is shown now.
    """

    row: CrushWriting
    at: datetime
    begun: datetime
    versions: int
    noted_at: datetime

    @property
    def cow_id(self) -> int:
        """The cow it is about; ValueError for a writing of another kind."""
        if self.row.cow_id is None:
            raise ValueError("this writing is about no cow")
        return self.row.cow_id

    def content(self) -> Content:
        """What it says, read back from what is kept."""
        return read_content(WritingKind(self.row.kind), self.row.content, [], is_gone=self.row.is_gone)
