"""Sizes of type of the report, in points: larger than elsewhere on our papers, for it is read in a parlour."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True)
class Sizes:
    """Of running text, of the tables, of the legend and of the heads of tables; `sole` is the drawings' width in mm,
    `above` and `below` the room round a row's words."""

    read: float
    table: float
    legend: float
    heads: float
    sole: float
    above: float
    below: float


LARGE: Final = Sizes(10.5, 10.0, 9.5, 9.0, 10.5, 2.5, 3.0)
# Where the large ones would take more pages than a farmer reads, and these fewer.
LESS: Final = Sizes(9.5, 9.0, 9.0, 8.5, 8.5, 1.5, 2.0)
