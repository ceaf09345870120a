"""What came from the crush on the pages of the visit and of the cow."""

from datetime import timedelta
from decimal import Decimal
from uuid import UUID, uuid4

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import (
    JPEG,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_house,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.domain.feet import Foot
from visits.models import CrushWriting, WashDown
from visits.services.keep_writings import keep_writings
from visits.services.save_photo import SentPhoto, save_photo

TEN_TWENTY = TUESDAY_TEN + timedelta(minutes=20)


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def visit(house):
    return under_way(house.farm, house.van)


def read(house, name, pk, by=None):
    client = Client()
    client.force_login(by or house.trimmer)
    answer = client.get(reverse(name, args=[pk]))
    assert answer.status_code == 200
    return " ".join(answer.content.decode().split())


def take_back(house, visit, trim):
    """As the phone does it: a writing that says she is gone, after the one that shows."""
    last = CrushWriting.objects.within(house.scope).get(record=trim.client_id)
    later = dict.fromkeys(("made_at", "placed_at", "received_at"), TEN_TWENTY + timedelta(minutes=5))
    keep_writings(
        visit=visit,
        rows=[
            CrushWriting(
                business=house.business,
                uid=uuid4(),
                visit=visit,
                kind="cow",
                record=last.record,
                cow=house.cow,
                after=last.uid,
                is_gone=True,
                content=last.content,
                phone=uuid4(),
                by=house.trimmer,
                **later,
            )
        ],
    )


def test_the_way_to_the_crush_is_shown_to_those_who_work_there(house, visit):
    way = f'href="{reverse("crush", args=[visit.pk])}"'
    assert way in read(house, "visit", visit.pk)
    assert way in read(house, "visit", visit.pk, house.owner)
    assert way not in read(house, "visit", visit.pk, house.office)


def test_a_wash_down_is_told_with_its_product(house, visit):
    WashDown.objects.create(
        business=house.business,
        visit=visit,
        record=uuid4(),
        substance="peracetic acid",
        dilution="1:100",
        contact_minutes=Decimal("10.0"),
        washed_at=TEN_TWENTY,
        by=house.trimmer,
    )
    told = "10:20, Trimmer of Ash &amp; Rye Foot Trimming: peracetic acid, 1:100, left on for 10 min"
    assert told in read(house, "visit", visit.pk)


def test_what_was_told_at_the_sign_off_stands_there_with_who_received_it(house, visit):
    visit = finish(visit, house.trimmer)
    visit.was_done, visit.farm_to_do = "12 cows trimmed", "Block off cow 101\nBy Tuesday"
    visit.save()
    page = read(house, "visit", visit.pk)
    assert "<dt>Received by</dt><dd>The herd manager</dd>" in page
    assert "12 cows trimmed" in page
    assert "Block off cow 101<br>By Tuesday" in page


def test_a_picture_stands_with_the_cow_and_foot_it_is_of(house, visit):
    trim = put_down(visit, house.cow, blocked_foot())
    photo = SentPhoto(UUID(int=5), trim.client_id, Foot.LEFT_HIND, TEN_TWENTY, JPEG)
    save_photo(visit=visit, photo=photo, at=TEN_TWENTY, by=house.trimmer)
    page = read(house, "visit", visit.pk)
    assert f'src="{reverse("trim_photo", args=[visit.pk, UUID(int=5)])}" alt="Cow 101, left hind"' in page


def test_a_cow_taken_back_is_told_on_both_pages_and_counts_nowhere(house, visit):
    take_back(house, visit, put_down(visit, house.cow, blocked_foot()))
    page = read(house, "visit", visit.pk)
    assert "0 of 12 cows done" in page
    assert "taken back Tue 3 Mar, 10:25" in page
    cow = read(house, "cow", house.cow.pk)
    assert "2 versions from the crush" in cow
    assert "10:25 by Trimmer of Ash &amp; Rye Foot Trimming: taken back" in cow


def test_the_earlier_versions_of_a_cow_stand_on_her_page_with_who_and_when(house, visit):
    put_down(visit, house.cow, trimmed_foot(), at=TEN_TWENTY)
    put_down(visit, house.cow, blocked_foot(), at=TEN_TWENTY + timedelta(minutes=9))
    page = read(house, "cow", house.cow.pk)
    shown, kept = page.index(">Shows"), page.index(">Kept")
    assert shown < kept
    assert "10:29" in page[shown:kept]
    assert "sole ulcer, 2; left hind inner: wooden block" in page[shown:kept]
    assert "10:20 by Trimmer of Ash &amp; Rye Foot Trimming: functional trim: left hind" in page[kept:]


def test_a_cow_put_down_once_has_no_versions_to_tell(house, visit):
    put_down(visit, house.cow, trimmed_foot())
    assert "from the crush" not in read(house, "cow", house.cow.pk)
