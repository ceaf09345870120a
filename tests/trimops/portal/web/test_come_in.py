"""Coming in without a password."""

import re

import pytest
from django.core import mail
from django.test import Client
from django.urls import reverse
from django.utils.html import escape

from farms.models import FarmAccess
from farms.services.close_farm_access import close_farm_access
from tests.factories import NOON, let_in, make_cow, make_farm
from trimops.accounts.roles import Role
from trimops.portal.services.make_link import LinkKind, make_link

ADDRESS = re.compile(r"http://testserver(\S+)")


@pytest.fixture
def stranger():
    return Client()


@pytest.fixture
def link(house):
    return reverse("come_in_by_link", args=[make_link(user=house.client, kind=LinkKind.TOLD)])


def ask(browser, email, **fields):
    return browser.post(reverse("come_in"), {"email": email, **fields})


def words(answer, email):
    text = re.sub(r'name="csrfmiddlewaretoken" value="\w+"', "", answer.content.decode())
    return text.replace(email, "EMAIL")


@pytest.mark.django_db(transaction=True)
def test_a_link_comes_by_mail_and_its_button_leads_to_the_page_that_was_wanted(
    house, stranger, transactional_db
):
    ask(stranger, house.client.email, next="/my-farm/cows/")
    (address,) = ADDRESS.findall(mail.outbox[0].body)
    shown = stranger.get(address)
    assert "Come in" in shown.content.decode()
    assert "_auth_user_id" not in stranger.session, "looking signs nobody in"
    assert stranger.post(address)["Location"] == "/my-farm/cows/"
    assert stranger.get("/my-farm/cows/").status_code == 200


@pytest.mark.django_db(transaction=True)
def test_a_link_that_was_asked_for_opens_in_no_other_browser_and_for_no_other_asking(
    house, stranger, transactional_db
):
    elsewhere = Client()
    ask(stranger, house.client.email)
    ask(elsewhere, house.client.email)
    first, second = (ADDRESS.findall(message.body)[0] for message in mail.outbox)
    cookie = stranger.cookies["come_in"]
    assert (cookie["httponly"], cookie["samesite"], cookie["max-age"]) == (True, "Lax", 3600)
    bent = Client()
    bent.cookies["come_in"] = cookie.value[:-1] + ("a" if cookie.value[-1] != "a" else "b")
    assert bent.get(first).status_code == 410
    for browser, address in ((stranger, second), (elsewhere, first), (Client(), first)):
        for answer in (browser.get(address), browser.post(address)):
            assert answer.status_code == 410
            assert "you asked for it in another browser" in answer.content.decode()
    ask(stranger, house.client.email)
    assert stranger.get(first).status_code == 410, "a newer one was asked for"
    (newest,) = ADDRESS.findall(mail.outbox[2].body)
    assert stranger.post(newest).status_code == 302
    assert elsewhere.post(second).status_code == 410, "the person came in since"


def test_the_answer_is_the_same_whether_or_not_the_address_is_known(house, stranger):
    known, staff, unknown = house.client.email, house.owner.email, "nobody@example.invalid"
    answers = [ask(stranger, email) for email in (known, staff, unknown)]
    assert {answer.status_code for answer in answers} == {200}
    assert len({words(*pair) for pair in zip(answers, (known, staff, unknown), strict=True)}) == 1


def test_after_four_links_in_an_hour_none_is_sent_and_nothing_tells(
    house, stranger, django_capture_on_commit_callbacks
):
    with django_capture_on_commit_callbacks(execute=True):
        answers = [ask(stranger, house.client.email) for _ in range(6)]
    assert len(mail.outbox) == 4
    assert len({words(answer, house.client.email) for answer in answers}) == 1


def test_one_machine_cannot_ask_for_links_without_end_whatever_it_says_it_is(db, stranger):
    def status(n):
        said = {"email": f"person-{n}@example.invalid"}
        return stranger.post(reverse("come_in"), said, headers={"X-Forwarded-For": f"10.0.0.{n}"}).status_code

    statuses = [status(n) for n in range(31)]
    assert statuses == [200] * 30 + [429]


ELSEWHERE = (
    *(
        "https://evil.example/",
        "//evil.example/",
        "javascript:alert(1)",
        "/\\evil.example/",
        "///evil.example/",
    ),
    *("//testserver@evil.example/", "http:evil.example/", "/\n/evil.example/"),
)


def test_nobody_is_led_away_from_the_site(house, stranger):
    for elsewhere in ELSEWHERE:
        house.client.refresh_from_db()
        link = reverse("come_in_by_link", args=[make_link(user=house.client, kind=LinkKind.TOLD)])
        browser = Client()
        assert elsewhere not in browser.get(reverse("come_in"), {"next": elsewhere}).content.decode()
        assert browser.post(link, query_params={"next": elsewhere})["Location"] == "/", elsewhere


def test_a_used_link_says_so_and_offers_a_new_one(stranger, link):
    stranger.post(link)
    later = Client()
    for answer in (later.get(link), later.post(link)):
        assert answer.status_code == 410
        assert "used already or is too old" in answer.content.decode()
        assert "Send me a link" in answer.content.decode()
    assert "_auth_user_id" not in later.session


def test_who_is_signed_in_already_goes_straight_on(house, stranger, link):
    stranger.force_login(house.client)
    assert stranger.get(f"{link}?next=/my-farm/cows/")["Location"] == "/my-farm/cows/"
    assert stranger.get(reverse("come_in"))["Location"] == "/"


def test_a_link_for_another_person_does_not_take_the_seat_unasked(house, stranger, link):
    stranger.force_login(house.owner)
    assert f"{escape(house.client.name)}, come in" in stranger.get(link).content.decode()
    assert stranger.get("/farms/").status_code == 200


def test_a_link_about_the_second_farm_sits_one_down_there(house, stranger, link):
    other = make_farm(house.business, "A Second Farm", by=house.owner)
    let_in(house.memberships[Role.FARM], other)
    for farm in (house.farm, other):
        stranger.force_login(house.client)
        stranger.get(f"{link}?farm={farm.pk}&next=/my-farm/")
        assert farm.name in stranger.get("/my-farm/").content.decode()


def test_a_link_to_a_farm_that_was_closed_to_the_person_shows_nothing_of_it(house, stranger):
    other = make_farm(house.business, "High Croft", by=house.owner)
    access = let_in(house.memberships[Role.FARM], other)
    link = reverse("come_in_by_link", args=[make_link(user=house.client, kind=LinkKind.TOLD)])
    close_farm_access(access=access, at=NOON)
    cow = make_cow(other, "909")
    there = stranger.post(f"{link}?farm={other.pk}&next={reverse('portal_cow', args=[cow.pk])}")["Location"]
    assert stranger.get(there).status_code == 404
    assert "Low Croft" in stranger.get("/my-farm/").content.decode()


def test_whose_last_farm_is_closed_while_they_are_signed_in_sees_nothing_from_then_on(house, stranger, link):
    stranger.force_login(house.client)
    assert stranger.get("/my-farm/").status_code == 200
    close_farm_access(access=FarmAccess.objects.within(house.scope).get(), at=NOON)
    # It was their only place, so they are signed out as well.
    assert stranger.get("/my-farm/")["Location"].startswith("/account/login/")
    stranger.force_login(house.client)
    assert stranger.get("/my-farm/").status_code == 403
    assert Client().post(link).status_code == 410


def test_who_is_switched_off_does_not_come_in_by_a_link_from_before(house, stranger, link):
    house.client.is_active = False
    house.client.save()
    assert stranger.post(link).status_code == 410
    assert "_auth_user_id" not in stranger.session


def test_the_buttons_want_the_token_of_their_page(house, link):
    browser = Client(enforce_csrf_checks=True)
    for address in (reverse("come_in"), link):
        assert browser.post(address, {"email": house.client.email}).status_code == 403
    assert "_auth_user_id" not in browser.session
