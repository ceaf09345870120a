"""A table that would rather split what belongs together than refuse to be printed."""

from reportlab.platypus import Flowable, Table

from trimops.paper.sheet import TEXT_HEIGHT

_LEAST_PIECE = 30


class KeptRows(Table):
    """Keeps rows and NOSPLIT groups whole, but for one that is taller than a whole page.

    reportlab gives up on such a row (LayoutError); a report with one endless cow must still come out.
    """

    def split(self, available_width: float, available_height: float) -> list[Flowable]:
        """The table in two parts; on a page of its own first the group at its top is let go, then its first row."""
        parts = super().split(available_width, available_height)
        if parts or available_height < TEXT_HEIGHT - 1:
            return parts
        self._let_first_group_go()
        return super().split(available_width, available_height) or self._split_in_row(
            available_width, available_height
        )

    def _let_first_group_go(self) -> None:
        kept = [command for command in self._nosplitCmds if command[1][1] > 1]  # type: ignore[has-type]
        self._nosplitCmds = kept

    def _split_in_row(self, width: float, height: float) -> list[Flowable]:
        self.splitInRow = _LEAST_PIECE
        parts = super().split(width, height)
        for part in parts:
            if isinstance(part, Table):
                part.splitInRow = 0
        return parts
