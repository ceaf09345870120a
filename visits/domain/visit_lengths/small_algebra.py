"""Algebra of small symmetric tables (tens of rows), in plain Python: the nightly learning needs no library.

Source: A.-L. Cholesky's factor, as in any textbook of numerical algebra; held against scipy in the tests.
"""

import math
from collections.abc import Sequence

Vector = list[float]
Table = list[list[float]]


class NotPositive(ValueError):
    """The table is not symmetric and positive definite."""


def zeros(rows: int, columns: int) -> Table:
    return [[0.0] * columns for _ in range(rows)]


def times(table: Sequence[Sequence[float]], vector: Sequence[float]) -> Vector:
    """Table times vector."""
    return [sum(a * b for a, b in zip(row, vector, strict=True)) for row in table]


def product(left: Sequence[Sequence[float]], right: Sequence[Sequence[float]]) -> Table:
    """Table times table."""
    columns = list(zip(*right, strict=True))
    return [[sum(a * b for a, b in zip(row, column, strict=True)) for column in columns] for row in left]


def turned(table: Sequence[Sequence[float]]) -> Table:
    """Rows as columns."""
    return [list(column) for column in zip(*table, strict=True)]


def inverse(table: Sequence[Sequence[float]]) -> Table:
    """The inverse of a symmetric positive definite table. NotPositive where it is none."""
    size = len(table)
    lower = _lower_factor(table)
    columns = [_solved(lower, [1.0 if at == column else 0.0 for at in range(size)]) for column in range(size)]
    return turned(columns)


def _lower_factor(table: Sequence[Sequence[float]]) -> Table:
    size = len(table)
    lower = zeros(size, size)
    for row in range(size):
        for column in range(row + 1):
            done = sum(a * b for a, b in zip(lower[row][:column], lower[column][:column], strict=True))
            rest = table[row][column] - done
            if row != column:
                lower[row][column] = rest / lower[column][column]
            elif rest > 0:
                lower[row][row] = math.sqrt(rest)
            else:
                raise NotPositive(f"row {row} depends on those before it")
    return lower


def _solved(lower: Table, right: Vector) -> Vector:
    size = len(lower)
    half = [0.0] * size
    for row in range(size):
        done = sum(a * b for a, b in zip(lower[row][:row], half[:row], strict=True))
        half[row] = (right[row] - done) / lower[row][row]
    whole = [0.0] * size
    for row in reversed(range(size)):
        done = sum(lower[below][row] * whole[below] for below in range(row + 1, size))
        whole[row] = (half[row] - done) / lower[row][row]
    return whole
