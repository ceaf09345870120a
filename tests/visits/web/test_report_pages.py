"""The report and the letters on a visit's page: issued, behind, issued anew; what is kept is what is answered."""

import pytest
from django.db import transaction
from django.test import Client
from django.urls import reverse

from farms.models import FarmAccess
from tests.factories import NOON, blocked_foot, finish, make_house, put_down, under_way
from visits.documents.visit_report_words import report_words
from visits.models import IssuedReport, Referral
from visits.selectors.issued_reports import stored_report
from visits.services.issue_report import issue_first_report


@pytest.fixture(scope="module")
def house(django_db_setup, django_db_blocker):
    """Made once for the file; what a test adds goes with the test."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make_house()
        transaction.set_rollback(True)


@pytest.fixture(autouse=True)
def _each_by_itself(db):
    """Every test ends where it began."""


@pytest.fixture(scope="module")
def visit(house):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot(for_vet="hot above the horn"), note="kicks")
    return finish(visit, house.trimmer)


def signed_in(user):
    client = Client()
    client.force_login(user)
    return client


def text_of(answer):
    return " ".join(answer.content.decode().split())


def test_a_visit_without_a_report_offers_to_issue_it_and_the_farm_sees_none(house, visit):
    office, farm = signed_in(house.office), signed_in(house.client)
    page = text_of(office.get(reverse("visit", args=[visit.pk])))
    assert "No report yet" in page
    paper = reverse("visit_report", args=[visit.pk])
    assert (office.get(paper).status_code, farm.get(paper).status_code) == (404, 404)
    assert office.get(reverse("visit_report_page", args=[visit.pk])).status_code == 404
    assert not IssuedReport.objects.within(house.scope).exists(), "looking issues nothing"
    office.post(reverse("visit_report_issue", args=[visit.pk]))
    row = IssuedReport.objects.within(house.scope).get()
    assert (row.version, row.made_by) == (1, house.office)
    for client in (office, farm):
        assert client.get(paper).content == bytes(row.pdf)


def test_the_page_tells_what_the_paper_tells(house, visit):
    row = issue_first_report(visit=visit, at=NOON)
    page = text_of(signed_in(house.office).get(reverse("visit_report_page", args=[visit.pk])))
    said = report_words(stored_report(row))
    for words in (
        said.title,
        said.vet[0].text,
        said.blocks[0].day,
        said.counts.basis,
        said.cows[0].note,
        said.used,
    ):
        assert " ".join(words.split()) in page
    assert page.count('class="sole"') == 1


def test_what_comes_late_is_said_and_a_new_version_leaves_the_old_one_as_it_was(house, visit):
    first = issue_first_report(visit=visit, at=NOON)
    Referral.objects.within(house.scope).update(told_whom="J. Marsden", told_at=NOON)
    office = signed_in(house.office)
    page = text_of(office.get(reverse("visit", args=[visit.pk])))
    assert "The report is behind" in page
    assert "cow 101: told J. Marsden 12:00" in page
    assert "Issue version 2 of the report" in page
    assert office.get(reverse("visit_report", args=[visit.pk])).content == bytes(first.pdf)
    office.post(reverse("visit_report_issue", args=[visit.pk]))
    assert "The report is behind" not in text_of(office.get(reverse("visit", args=[visit.pk])))
    older = office.get(reverse("visit_report_version", args=[visit.pk, 1]))
    assert older.content == bytes(first.pdf)
    assert office.get(reverse("visit_report", args=[visit.pk])).content != bytes(first.pdf)
    assert office.get(reverse("visit_report_version", args=[visit.pk, 9])).status_code == 404


def test_a_letter_is_written_by_a_button_and_read_by_the_farm_if_it_may(house, visit):
    trim = visit.trims.within(house.scope).get()
    where = [visit.pk, trim.pk]
    office, farm = signed_in(house.office), signed_in(house.client)
    assert office.get(reverse("referral_letter", args=where)).status_code == 404
    office.post(reverse("referral_issue", args=where))
    assert "Letter to the vet, cow 101" in text_of(office.get(reverse("visit", args=[visit.pk])))
    assert farm.get(reverse("referral_letter", args=where)).content.startswith(b"%PDF")
    assert "The letter is behind" not in text_of(office.get(reverse("visit", args=[visit.pk])))
    Referral.objects.within(house.scope).update(told_whom="J. Marsden", told_at=NOON)
    page = text_of(office.get(reverse("visit", args=[visit.pk])))
    assert "The letter is behind</span> Noted since it was written: who was told." in page
    FarmAccess.objects.within(house.scope).update(reads_reports=False)
    for name, parts in (("referral_letter", where), ("visit_report", where[:1])):
        assert farm.get(reverse(name, args=parts)).status_code == 403


def test_a_letter_about_a_cow_of_another_visit_is_not_there(house, visit):
    other = under_way(house.farm, house.van)
    trim = put_down(other, house.cow, blocked_foot())
    assert (
        signed_in(house.office).post(reverse("referral_issue", args=[visit.pk, trim.pk])).status_code == 404
    )
