from tests.visits.domain.planning.hand_made import job, week, window
from tests.visits.domain.planning.offers.standing import standing
from visits.domain.planning.offers.guest import board_with
from visits.domain.planning.offers.offers_in import offers_in


def test_each_room_of_each_position_is_an_offer():
    two = [window("07:00", "09:30"), window("13:00", "16:00")]
    made, new = standing(week(job("a", windows=[window("10:00", "12:00")]), job("new", windows=two)), (0,))
    board, guest = board_with(made.board, new)
    found = list(offers_in(board, made.figures(0), guest))
    assert [offer.place.order for offer in found] == [(1, 0), (0, 1)]
    assert all(offer.first <= offer.last for offer in found)


def test_it_is_priced_against_the_round_as_it_stood():
    made, new = standing(week(job("a"), job("b"), job("new")), (0, 1))
    board, guest = board_with(made.board, new)
    alone = next(offers_in(board, made.without(0, 0), guest))
    against = next(offers_in(board, made.without(0, 0), guest, made.figures(0)))
    assert (alone.added.money, against.added.money) == (2400, 0)
