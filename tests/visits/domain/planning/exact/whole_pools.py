"""Every day that a small week allows, as a pool to choose from."""

from visits.domain.planning.exact_small import _best_orders


def whole_pool(board):
    """By shift and set of jobs: the cheapest cost and its order, found by trying every order."""
    return {
        (shift, frozenset(order)): (cost, order)
        for shift in range(len(board.problem.shifts))
        for cost, order in _best_orders(board, shift).values()
    }
