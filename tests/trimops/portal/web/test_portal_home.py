"""The farm client's first page, cows, calendar and invoices."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from farms.models import Cow, Farm, FarmAccess
from farms.services.close_farm_access import close_farm_access
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from tests.factories import (
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    make_prices,
    photo_of,
    put_down,
    under_way,
)
from trimops.accounts.roles import FarmRight
from visits.models import CalendarAddress
from visits.services.issue_letter import issue_letter
from visits.services.issue_report import issue_first_report


@pytest.fixture
def done(house):
    """A visit of ten days ago with a block, a photo and a foot for the vet."""
    make_prices(house.business)
    visit = under_way(house.farm, house.van, timezone.now() - timedelta(days=10))
    photo_of(put_down(visit, house.cow, blocked_foot(for_vet="hot above the horn")))
    return finish(visit, house.trimmer)


def page(client, name, *parts):
    return client.get(reverse(name, args=parts)).content.decode()


def test_the_block_the_look_again_and_the_vets_cow_stand_on_the_first_page_once(client, done):
    home = page(client, "portal_home")
    assert home.count("Cow 101, left hind</a>") == 2, "once for the vet, once to mind"
    assert "hot above the horn" in home
    assert "block off by" in home


def test_a_cow_that_is_the_vets_is_called_so_on_her_own_page_until_she_was_seen_again(house, client, done):
    assert "Cow 101: for the vet" in page(client, "portal_cow", house.cow.pk)
    again = under_way(house.farm, house.van, timezone.now() - timedelta(days=2))
    put_down(again, house.cow, blocked_foot())
    assert "Cow 101: 1 block on" in page(client, "portal_cow", house.cow.pk)


def test_a_cow_seen_again_since_is_no_longer_told_as_the_vets(house, client, done):
    again = under_way(house.farm, house.van, timezone.now() - timedelta(days=2))
    put_down(again, house.cow, blocked_foot())
    assert "For the vet" not in page(client, "portal_home")


def test_what_a_person_may_not_do_is_not_offered(client, rights, done):
    rights()
    home = page(client, "portal_home")
    for words in ("Ask for a visit", "All reports", "Invoices", "mobility scores"):
        assert words not in home


def test_a_cow_shows_what_was_seen_on_which_foot_with_the_sole_drawn_and_the_photo(house, client, done):
    cow = page(client, "portal_cow", house.cow.pk)
    assert "sole ulcer, outer claw, where sole meets heel, 2 of 3" in cow
    assert cow.count('class="sole"') == 1
    assert "/photos/" in cow


def test_cows_are_found_by_a_part_of_the_number_and_stand_in_order(house, client):
    for number in ("99", "1000", "100"):
        make_cow(house.farm, number)
    make_cow(make_farm(house.business, "High Croft", by=house.owner), "1001")
    found = client.get(reverse("portal_cows"), {"q": "10"})
    assert [cow.number for cow in found.context["page"]] == ["100", "101", "1000"]


def test_the_calendar_address_of_a_farm_shows_that_farm_and_can_be_closed(house, client):
    made = client.post(reverse("portal_calendar"), {"name": "My phone"})
    address = made.context["new_address"]
    assert Client().get(address).status_code == 200
    row = CalendarAddress.objects.within(house.scope).get()
    assert row.farm == house.farm
    client.post(reverse("portal_calendar_close", args=[row.pk]))
    assert Client().get(address).status_code == 404


def test_issued_invoices_are_shown_with_what_they_come_to_and_drafts_are_not(house, client, done):
    draft = draft_invoice(visit=done, at=timezone.now())
    assert "No invoice yet" in page(client, "portal_money")
    assert client.get(reverse("portal_invoice_paper", args=[draft.pk])).status_code == 404
    issued = issue_invoice(invoice=draft, at=timezone.now(), by=house.owner)
    assert issued.number in page(client, "portal_money")
    paper = client.get(reverse("portal_invoice_paper", args=[issued.pk]))
    assert paper.content == bytes(issued.papers.pdf)


def test_a_farm_that_was_closed_lets_nobody_in(house, client):
    Farm.objects.within(house.scope).filter(pk=house.farm.pk).update(is_active=False)
    assert client.get(reverse("portal_home")).status_code == 403


def test_a_person_who_may_only_see_money_finds_the_way_to_it(client, rights):
    rights(FarmRight.SEES_MONEY)
    home = page(client, "portal_home")
    assert f'href="{reverse("portal_money")}"' in home
    assert f'href="{reverse("portal_reports")}"' not in home


def test_the_calendar_of_somebody_who_was_taken_out_ends(house, client):
    address = client.post(reverse("portal_calendar"), {"name": "My phone"}).context["new_address"]
    access = FarmAccess.objects.within(house.scope).get()
    close_farm_access(access=access, at=timezone.now())
    assert Client().get(address).status_code == 404


def test_a_report_leads_to_its_cows_and_to_the_letters_for_the_vet(house, client, done):
    assert "is not issued yet" in page(client, "portal_report", done.pk)
    issue_first_report(visit=done, at=timezone.now(), tell=False)
    letter = issue_letter(trim=done.trims.within(house.scope).get(), at=timezone.now(), by=house.owner)
    report = page(client, "portal_report", done.pk)
    assert f'href="{reverse("portal_cow", args=[house.cow.pk])}"' in report
    assert client.get(reverse("referral_letter", args=[done.pk, letter.trim_id])).status_code == 200
    assert "Letter for the vet (PDF)" in page(client, "portal_home")
    assert reverse("referral_letter", args=[done.pk, letter.trim_id]) in report


def test_a_visit_that_is_still_going_on_has_no_report(house, client):
    visit = under_way(house.farm, house.van, timezone.now() - timedelta(hours=1))
    assert client.get(reverse("portal_report", args=[visit.pk])).status_code == 404


def test_the_next_page_of_cows_asks_for_the_same_number(house, client):
    cows = [Cow(business=house.business, farm=house.farm, number=f"7&{number}") for number in range(61)]
    Cow.objects.bulk_create(cows)
    assert 'href="?q=7%26&amp;page=2"' in client.get(reverse("portal_cows"), {"q": "7&"}).content.decode()


def test_a_number_that_no_database_takes_finds_nothing_and_breaks_nothing(client):
    assert "Null characters" in client.get(reverse("portal_cows"), {"q": "1\0"}).content.decode()


def test_a_year_that_no_calendar_has_has_no_paper(house, client):
    for year in (0, 9999, 10_000, 10**20):
        assert client.get(f"/farms/{house.farm.pk}/feet/{year}.pdf").status_code == 404
