"""Which blades were in hand on a visit, and what was said of them."""

from itertools import permutations

import pytest

from tests.factories import TUESDAY_TEN, make_blade, make_house
from tests.visits.services.sendings import HOUR, made, outcomes, phone_at, reasons, send
from visits.models import Blade, BladeSaid, BladeTurn

AT = TUESDAY_TEN + HOUR
NO_WORD = {"in_hand": [], "went_dull": [], "cracked": [], "chipped": []}


@pytest.fixture
def phone(visit):
    return phone_at(visit)


@pytest.fixture
def long_knife(house):
    return make_blade(house.van, "Long knife")


@pytest.fixture
def short_knife(house):
    return make_blade(house.van, "Short knife")


def turn(at=AT, **said):
    keys = {part: [blade.pk for blade in blades] for part, blades in said.items()}
    return {**NO_WORD, **keys, "at": at.isoformat()}


def said(house):
    rows = BladeSaid.objects.within(house.scope).order_by("turn__at", "blade__name", "part")
    return [(row.blade.name, row.part) for row in rows.select_related("blade")]


def state_of(blade):
    row = Blade.objects.within(blade.scope).get(pk=blade.pk)
    return row.state, row.fault


def test_a_turn_says_what_is_in_hand_and_what_dragged_at_its_moment(
    house, visit, phone, long_knife, short_knife
):
    sent = phone.write(turn(in_hand=[short_knife], went_dull=[long_knife]), kind="blade", **made(AT))
    send(phone, house, AT)
    row = BladeTurn.objects.within(house.scope).get()
    assert (row.visit, str(row.record), row.at, row.by) == (visit, sent["record"], AT, house.trimmer)
    assert said(house) == [("Long knife", "went_dull"), ("Short knife", "in_hand")]


def test_a_clock_that_is_wrong_is_put_right(house, phone, long_knife):
    """Three hours ahead; the change of hands was ten minutes before it was noted."""
    ahead = AT + 3 * HOUR
    phone.write(turn(ahead - HOUR / 6, in_hand=[long_knife]), kind="blade", **made(ahead))
    body = phone.body(sent_at=ahead.isoformat())
    phone.body = lambda **_: body
    send(phone, house, AT)
    assert BladeTurn.objects.within(house.scope).get().at == AT - HOUR / 6


def test_changed_it_is_one_turn_with_the_new_words_and_taken_back_none(house, phone, long_knife, short_knife):
    first = phone.write(turn(in_hand=[long_knife]), kind="blade", **made(AT))
    second = phone.edit(first, turn(in_hand=[short_knife], went_dull=[long_knife]), **made(AT))
    send(phone, house, AT)
    assert said(house) == [("Long knife", "went_dull"), ("Short knife", "in_hand")]
    third = phone.edit(second, turn(in_hand=[long_knife]), **made(AT))
    send(phone, house, AT)
    assert said(house) == [("Long knife", "in_hand")]
    phone.undo(third)
    send(phone, house, AT + HOUR)
    assert not BladeTurn.objects.within(house.scope).exists()


def test_all_put_down_is_a_turn_too(house, phone):
    phone.write(turn(), kind="blade", **made(AT))
    send(phone, house, AT)
    assert BladeTurn.objects.within(house.scope).count() == 1
    assert said(house) == []


@pytest.mark.parametrize("part", ["cracked", "chipped"])
def test_cracked_or_chipped_is_out_of_use_at_once_and_back_when_the_word_is_taken_back(
    house, phone, long_knife, part
):
    phone.write(turn(AT - HOUR, in_hand=[long_knife]), kind="blade", **made(AT))
    sent = phone.write(turn(**{part: [long_knife]}), kind="blade", **made(AT))
    send(phone, house, AT)
    assert state_of(long_knife) == ("out_of_use", part)
    phone.undo(sent)
    send(phone, house, AT + HOUR)
    assert state_of(long_knife) == ("in_use", "")


def test_a_word_moved_to_another_blade_frees_the_first(house, phone, long_knife, short_knife):
    sent = phone.write(turn(cracked=[long_knife]), kind="blade", **made(AT))
    send(phone, house, AT)
    phone.edit(sent, turn(cracked=[short_knife]), **made(AT))
    send(phone, house, AT)
    assert state_of(long_knife)[1] == ""
    assert state_of(short_knife) == ("out_of_use", "cracked")


def test_in_whatever_order_turns_arrive_the_rows_and_the_blade_are_the_same(house, visit):
    """The second turn was changed from chipped to cracked before it was sent, and its versions come the wrong way."""
    disc, ends = make_blade(house.van, "Disc", kind="grinder_disc"), []
    words = ({"in_hand": [disc]}, {"chipped": [disc]}, {"went_dull": [disc], "in_hand": [disc]})
    for order in permutations(range(3)):
        phone = phone_at(visit)
        turns = [
            phone.write(turn(AT + nth * HOUR, **said), kind="blade", **made(AT))
            for nth, said in enumerate(words)
        ]
        changed = phone.edit(turns[1], turn(AT + HOUR, cracked=[disc]), **made(AT))
        for nth in order:
            phone.waiting = [changed, turns[1]] if nth == 1 else [turns[nth]]
            send(phone, house, AT + 9 * HOUR)
        ends.append((said(house), state_of(disc)))
        BladeTurn.objects.within(house.scope).delete()
    hands = [("Disc", part) for part in ("in_hand", "cracked", "in_hand", "went_dull")]
    assert ends == [(hands, ("out_of_use", "cracked"))] * 6


def test_a_blade_of_another_business_or_of_nobody_is_told_by_its_place(house, phone, long_knife):
    foreign = make_blade(make_house("Other").van, "Theirs")
    phone.write(turn(in_hand=[long_knife, foreign]), kind="blade", **made(AT))
    phone.write({**turn(), "chipped": [987_654]}, kind="blade", **made(AT))
    answers = send(phone, house, AT)
    assert outcomes(answers) == ["refused", "refused"]
    assert reasons(answers) == [
        [("content.in_hand[1]", "is not among your blades")],
        [("content.chipped[0]", "is not among your blades")],
    ]
    assert not BladeTurn.objects.within(house.scope).exists()
