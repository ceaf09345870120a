"""A table of amounts over several pages: what is carried over stands at the end of a page and again on the next."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import accumulate

from reportlab.platypus import Flowable, Table

from trimops.paper.sheet import TEXT_HEIGHT
from trimops.paper.tables import Cell

OVER = "Carried over"
FORWARD = "Brought forward"


@dataclass(frozen=True)
class CarriedRow:
    """Cells of one row; `carried` is what is carried over where a page ends after it, in words ("1,234.50").

    A row that `leads` never stands last on a page: it is the heading of the next.
    """

    cells: tuple[Cell, ...]
    carried: str = ""
    leads: bool = False


Draw = Callable[[Sequence[CarriedRow]], Table]
Told = Callable[[str, str], CarriedRow]


class CarriedRows(Flowable):
    """`draw` makes the table of some rows, its head repeated; `told` makes the row of a word and an amount."""

    def __init__(self, rows: Sequence[CarriedRow], draw: Draw, told: Told, forward: str = "") -> None:
        super().__init__()
        self.rows, self.draw_rows, self.told = list(rows), draw, told
        self.begun = [told(FORWARD, forward)] if forward else []
        self.table = draw([*self.begun, *self.rows])

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        self.width, self.height = self.table.wrap(available_width, available_height)
        return self.width, self.height

    def split(self, available_width: float, available_height: float) -> list[Flowable]:
        """The rows that fit with what they carry over below them, and the rest."""
        self.table.wrap(available_width, available_height)
        count = self._fitting(available_width, available_height)
        if count:
            return self._parted(count)
        if available_height < TEXT_HEIGHT - 1:
            return []
        # One row fills more than a page: the table itself knows how to break a row.
        return self.table.split(available_width, available_height)

    def draw(self) -> None:
        self.table.drawOn(self.canv, 0, 0)

    def _fitting(self, width: float, height: float) -> int:
        heights = list(accumulate(self.table._rowHeights))  # type: ignore[attr-defined]
        before = 1 + len(self.begun)
        room = height - self._carry_height(width)
        count = sum(1 for reached in heights[before:] if reached <= room)
        while count and self.rows[count - 1].leads:
            count -= 1
        return count

    def _carry_height(self, width: float) -> float:
        table = self.draw_rows([self.told(OVER, "0")])
        _, height = table.wrap(width, TEXT_HEIGHT)
        return float(height - table._rowHeights[0])  # type: ignore[attr-defined]

    def _parted(self, count: int) -> list[Flowable]:
        carried = self.rows[count - 1].carried
        first = self.draw_rows([*self.begun, *self.rows[:count], self.told(OVER, carried)])
        return [first, CarriedRows(self.rows[count:], self.draw_rows, self.told, carried)]
