"""The cows of a visit as they show."""

from decimal import Decimal

import pytest
from django.db.models import Sum

from invoicing.models import Invoice
from tests.factories import TUESDAY_TEN, finish, make_kit, make_prices, photo_of
from tests.visits.api.phone import WRAP, blocked, cow_content, foot
from tests.visits.services.sendings import HOUR, made, phone_at, send
from visits.models import Block, Recheck, Referral, StockMovement, Trim, TrimmedFoot, Visit

AT = TUESDAY_TEN + HOUR
HANGING = (TrimmedFoot, Referral, Block, Recheck)


@pytest.fixture
def phone(visit):
    return phone_at(visit)


def trim_of(house):
    return Trim.objects.with_taken_back(house.scope).get()


def used(house):
    rows = (
        StockMovement.objects.within(house.scope).values_list("consumable__name").order_by("consumable__name")
    )
    return {name: -total for name, total in rows.annotate(Sum("quantity")) if total}


def test_every_word_of_the_cow_is_in_her_row(house, phone):
    words = {"belly_band_minutes": 4, "crush_seconds": 300, "note": "Quiet", "for_vet": "thin and dull"}
    lame = {"mobility_scale": "S1-5", "mobility_score": 3}
    phone.write(cow_content(house.cow.pk, foot(), told_vet="The practice", **words, **lame))
    send(phone, house, AT)
    trim = trim_of(house)
    assert {name: getattr(trim, name) for name in {**words, **lame}} == {**words, **lame}
    assert (trim.told_vet, trim.kind, trim.recorded_by) == ("The practice", "check", house.trimmer)


def test_what_the_trimmer_leaves_to_the_vet_is_referred_with_who_was_told(house, phone):
    phone.write(cow_content(house.cow.pk, foot("RH", for_vet="odd lump"), told_vet="The practice"))
    send(phone, house, AT)
    referral = Referral.objects.within(house.scope).get()
    assert (referral.foot, referral.reason, referral.told_whom) == ("RH", "odd lump", "The practice")


def test_days_set_by_hand_and_the_vets_word_stay_on_the_foot(house, phone):
    phone.write(cow_content(house.cow.pk, foot("RH", look_again_days=9, for_vet="odd lump")))
    send(phone, house, AT)
    row = TrimmedFoot.objects.within(house.scope).get()
    assert (row.look_again_days, row.for_vet) == (9, "odd lump")
    assert Recheck.objects.within(house.scope).get().cause == "by_hand"


def test_a_cow_taken_back_keeps_her_row_for_history_and_nothing_else(house, phone):
    make_kit(house.business)
    writing = phone.write(cow_content(house.cow.pk, blocked(), foot("RF", actions=[WRAP], for_vet="lump")))
    send(phone, house, AT)
    assert all(model.objects.within(house.scope).exists() for model in HANGING)
    phone.undo(writing)
    send(phone, house, AT + HOUR)
    assert not any(model.objects.within(house.scope).exists() for model in HANGING)
    trim = trim_of(house)
    assert (trim.taken_back_at is not None, trim.version, trim.note) == (True, 2, "")
    assert not Trim.objects.within(house.scope).exists()
    assert used(house) == {}
    assert StockMovement.objects.within(house.scope).count() == 6, "the ledger is only added to"


def test_a_later_word_brings_her_back(house, phone):
    make_kit(house.business)
    gone = phone.undo(phone.write(cow_content(house.cow.pk, blocked())))
    send(phone, house, AT)
    phone.edit(gone, is_gone=False)
    send(phone, house, AT + HOUR)
    assert Trim.objects.within(house.scope).get().taken_back_at is None
    assert Block.objects.within(house.scope).count() == Recheck.objects.within(house.scope).count() == 1
    assert used(house) == {"Glue": Decimal(25), "Wooden block": Decimal(1)}


def test_a_cow_taken_back_before_she_came_leaves_no_row(house, phone):
    phone.undo(phone.write(cow_content(house.cow.pk, blocked())))
    send(phone, house, AT)
    assert not Trim.objects.with_taken_back(house.scope).exists()


def test_a_row_that_was_taken_back_can_be_read_again_locked_and_saved(house, phone):
    writing = phone.write(cow_content(house.cow.pk, blocked()))
    send(phone, house, AT)
    phone.undo(writing)
    send(phone, house, AT + HOUR)
    trim = trim_of(house).locked()
    trim.note = "kept"
    trim.save()
    trim.refresh_from_db()
    assert (trim.note, trim_of(house).note) == ("kept", "kept")


def test_a_photo_stays_with_a_cow_taken_back(house, phone):
    writing = phone.write(cow_content(house.cow.pk, blocked()))
    send(phone, house, AT)
    photo = photo_of(trim_of(house))
    phone.undo(writing)
    send(phone, house, AT + HOUR)
    photo.refresh_from_db()
    assert photo.trim_id == trim_of(house).pk


def test_a_late_cow_is_gathered_into_a_visit_and_into_the_draft_but_never_billed_twice(
    house, phone, django_capture_on_commit_callbacks
):
    make_prices(house.business)
    finish(phone.visit, house.trimmer, AT)
    for number in range(2):
        phone.write(cow_content(house.cow.pk, blocked(), note=str(number)))
        with django_capture_on_commit_callbacks(execute=True):
            send(phone, house, AT + HOUR)
    assert Invoice.objects.within(house.scope).get().visit == phone.visit
    recheck = Recheck.objects.within(house.scope).get()
    assert recheck.visit == Visit.objects.within(house.scope).get(reason="recheck", state="wanted")


def test_a_cow_on_a_visit_under_way_starts_no_job(house, phone, django_capture_on_commit_callbacks):
    phone.write(cow_content(house.cow.pk, blocked()))
    with django_capture_on_commit_callbacks() as jobs:
        send(phone, house, AT)
    assert jobs == []


def test_a_hundred_cows_take_hardly_more_questions_than_one(house, phone, django_assert_max_num_queries):
    keys = [house.cow.pk]
    for number in range(99):
        cow = house.farm.cows.within(house.scope).create(
            business=house.business, farm=house.farm, number=f"N{number}"
        )
        keys.append(cow.pk)
    for key in keys:
        phone.write(cow_content(key, blocked(), foot("RH")))
    with django_assert_max_num_queries(60):
        send(phone, house, AT)
    assert Block.objects.within(house.scope).count() == 100


def test_a_change_made_the_next_day_leaves_the_work_on_the_day_she_was_in_the_crush(house, phone):
    writing = phone.write(cow_content(house.cow.pk, blocked()), **made(AT))
    send(phone, house, AT)
    before = list(Block.objects.within(house.scope).values_list("pk", "put_on", "off_due"))
    due = list(Recheck.objects.within(house.scope).values_list("due_from", "due_until"))

    phone.edit(writing, cow_content(house.cow.pk, blocked(), note="Quiet"), **made(AT + 26 * HOUR))
    send(phone, house, AT + 26 * HOUR)

    trim = trim_of(house)
    assert (trim.recorded_at, trim.version, trim.note) == (AT, 2, "Quiet")
    assert list(Block.objects.within(house.scope).values_list("pk", "put_on", "off_due")) == before
    assert list(Recheck.objects.within(house.scope).values_list("due_from", "due_until")) == due
