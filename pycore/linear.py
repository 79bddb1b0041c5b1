"""Small systems of linear equations, solved only with + - x / and square roots: the same bits on every machine."""

import math
from collections.abc import Sequence

Row = Sequence[float]
SINGULAR = 1e-11
"""A system is singular if a diagonal element is below this share of the largest."""


class SingularMatrixError(ValueError):
    """Raised if the equations do not determine their unknowns."""


def triangle(rows: Sequence[Row], right: Row) -> tuple[list[list[float]], list[float]]:
    """Return R and Qt b of the least-squares problem "rows times x = right".

    Householder reflections (Golub and Van Loan, Matrix Computations, section 5.3; from memory). Raises
    SingularMatrixError.
    """
    work = [[*row, value] for row, value in zip(rows, right, strict=True)]
    count = len(rows[0])
    for column in range(count):
        length = math.sqrt(math.fsum(row[column] * row[column] for row in work[column:]))
        if length == 0.0:
            raise SingularMatrixError("a column is empty")
        first = work[column][column]
        head = -length if first > 0 else length
        mirror = [row[column] for row in work[column:]]
        mirror[0] -= head
        square = math.fsum(value * value for value in mirror)
        for place in range(column, count + 1):
            along = 2.0 * math.fsum(m * row[place] for m, row in zip(mirror, work[column:], strict=True)) / square
            for m, row in zip(mirror, work[column:], strict=True):
                row[place] -= along * m
    sides = [math.fabs(work[place][place]) for place in range(count)]
    if min(sides) < SINGULAR * max(sides):
        raise SingularMatrixError("the equations depend on one another")
    upper = [[0.0] * row + work[row][row:count] for row in range(count)]
    return upper, [work[row][count] for row in range(count)]


def back(upper: Sequence[Row], right: Row) -> list[float]:
    """Solve an upper triangular system by back substitution."""
    solution = [0.0] * len(right)
    for row in range(len(right) - 1, -1, -1):
        known = math.fsum(upper[row][place] * solution[place] for place in range(row + 1, len(right)))
        solution[row] = (right[row] - known) / upper[row][row]
    return solution


def least_squares(rows: Sequence[Row], right: Row) -> list[float]:
    """Return the x for which "rows times x" is closest to ``right``; at least as many rows as unknowns.

    Raises SingularMatrixError.
    """
    return back(*triangle(rows, right))


def inverse_of_normal(rows: Sequence[Row]) -> list[list[float]]:
    """Return the inverse of (rows transposed times rows): the covariance of x for unit errors. Raises
    SingularMatrixError."""
    upper, _ = triangle(rows, [0.0] * len(rows))
    count = len(upper)
    columns = [back(upper, [float(row == place) for row in range(count)]) for place in range(count)]
    return [
        [math.fsum(columns[k][i] * columns[k][j] for k in range(count)) for j in range(count)] for i in range(count)
    ]
