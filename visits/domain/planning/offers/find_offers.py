"""All places where a job fits into the week as it stands, best first."""

from visits.domain.planning.offers.guest import board_with
from visits.domain.planning.offers.offer import Offer, by_weight
from visits.domain.planning.offers.offers_in import offers_in
from visits.domain.planning.offers.standing_week import StandingWeek
from visits.domain.planning.problem import Job


def find_offers(standing: StandingWeek, job: Job) -> list[Offer]:
    """Every span of every place for `job`, which is no job of the problem yet; the least added weight first.

    The job's index in the orders is the number of jobs of the problem. `job.place` is an index into its travel
    tables. Exact: any other place, and any start outside these spans, breaks a rule or a promise.
    """
    board, guest = board_with(standing.board, job)
    shifts = board.homes[guest.at]
    found = [offer for shift in shifts for offer in offers_in(board, standing.figures(shift), guest)]
    return sorted(found, key=by_weight)
