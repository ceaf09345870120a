"""A week with one stop in another place: plain changes of the orders, nothing timed."""

from visits.domain.planning.board import Week


def without(week: Week, job: int) -> Week:
    """The week in which nobody does `job`."""
    return tuple(tuple(each for each in order if each != job) for order in week)


def with_stop(week: Week, job: int, shift: int, position: int) -> Week:
    """The week in which `job` is the stop number `position` (from 0) of `shift`, and nowhere else.

    The position counts among the other stops of that shift; IndexError where there is none such.
    """
    rest = without(week, job)
    order = rest[shift]
    if not 0 <= position <= len(order):
        raise IndexError(position)
    longer = (*order[:position], job, *order[position:])
    return (*rest[:shift], longer, *rest[shift + 1 :])


def place_of(week: Week, job: int) -> tuple[int, int] | None:
    """(shift, position) of the job, or None where it is left out."""
    for shift, order in enumerate(week):
        if job in order:
            return shift, order.index(job)
    return None
