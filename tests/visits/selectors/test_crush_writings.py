from datetime import timedelta
from uuid import UUID, uuid4

from tests.factories import TUESDAY_TEN, make_cow, under_way
from visits.models import CrushWriting
from visits.selectors.crush_writings import writings_of

OURS, THEIRS = UUID(int=1), UUID(int=2)


def write(house, visit, phone, minutes=0, **fields):
    at = dict.fromkeys(("made_at", "placed_at", "received_at"), TUESDAY_TEN + timedelta(minutes=minutes))
    keys = {"uid": uuid4(), "record": uuid4(), "cow": house.cow, "kind": "cow", "phone": phone}
    return CrushWriting.objects.create(
        business=house.business, visit=visit, by=house.trimmer, **{**keys, **at, **fields}
    )


def uids(writings):
    return [UUID(row["uid"]) for row in writings.rows]


def test_another_phones_writings_are_told_in_the_order_in_which_they_came(house):
    visit = under_way(house.farm, house.van)
    late, mine, early = write(house, visit, THEIRS, 5), write(house, visit, OURS), write(house, visit, THEIRS)
    told = writings_of(house.scope, visit, not_by_phone=OURS)
    assert uids(told) == [late.uid, early.uid]
    assert [row["shows"] for row in told.rows] == [True, False]
    assert told.rows[0]["beside"] == [str(mine.uid)]


def test_what_was_told_before_is_not_told_again_and_there_is_an_end(house):
    visit = under_way(house.farm, house.van)
    rows = [write(house, visit, THEIRS, cow=make_cow(house.farm, str(n))) for n in range(3)]
    first = writings_of(house.scope, visit, most=2)
    assert (uids(first), first.has_more) == ([row.uid for row in rows[:2]], True)
    rest = writings_of(house.scope, visit, seen=first.cursor, most=2)
    assert (uids(rest), rest.has_more) == ([rows[2].uid], False)
    nothing = writings_of(house.scope, visit, seen=rest.cursor)
    assert (nothing.rows, nothing.cursor) == ([], rest.cursor)


def test_another_visits_writings_are_not_told(house):
    write(house, under_way(house.farm, house.van), THEIRS)
    other = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=1))
    assert writings_of(house.scope, other).rows == []
