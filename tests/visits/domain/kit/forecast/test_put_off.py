from tests.visits.domain.kit.forecast.made_models import RECHECK, made
from visits.domain.kit.forecast.put_off import put_off_as_made


def off(days, **fields):
    return made(0, routine=0, days=days, is_made=False, **{"notice": 6, **fields})


def test_a_visit_made_soon_after_stands_for_the_one_called_off():
    found = put_off_as_made([made(3, days=-9, notice=1), off(-10)])
    assert [(visit.day.day, visit.is_made, visit.notice) for visit in found] == [(21, True, 6)]


def test_what_is_not_made_up_for_stays_called_off():
    lost = [off(-30), made(3, days=-20, notice=1)]
    assert put_off_as_made(lost) == lost
    elsewhere = [off(-10), made(3, days=-9, farm=2, notice=1), made(3, days=-9, reason=RECHECK, notice=1)]
    assert put_off_as_made(elsewhere) == elsewhere


def test_two_in_a_row_lose_one():
    found = put_off_as_made([off(-10), off(-9), made(3, days=-8, notice=0), made(3, days=-7, notice=6)])
    assert [(visit.day.day, visit.is_made) for visit in found] == [(20, False), (22, True), (23, True)]


def test_a_notice_that_nobody_knows_stays_unknown():
    assert put_off_as_made([off(-10, notice=None), made(3, days=-9, notice=1)])[0].notice is None
