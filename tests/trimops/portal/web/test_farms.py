"""A person with several farms."""

from django.urls import reverse

from farms.models import Erasure, VetPass
from farms.services.give_farm_rights import give_farm_rights
from tests.factories import let_in, make_business, make_farm, make_member
from trimops.accounts.roles import FarmRight, Role
from visits.models import CalendarAddress, MobilityScoring, Visit


def test_a_farm_of_another_business_of_theirs_can_be_chosen(house, client):
    business = make_business("Fell & Beck")
    elsewhere = make_farm(business, "Fell Foot", by=house.owner)
    let_in(make_member(business, Role.FARM, house.client), elsewhere)
    assert "Fell Foot" in client.get(reverse("portal_farms")).content.decode()
    client.post(reverse("portal_farms"), {"farm": elsewhere.pk})
    page = client.get(reverse("portal_home")).content.decode()
    assert "Fell Foot: no visit" in page
    assert "Fell &amp; Beck" in page


def test_a_farm_that_is_not_theirs_is_not_there(house, client):
    other = make_farm(house.business, "High Croft", by=house.owner)
    for farm in (other.pk, "x", ""):
        assert client.post(reverse("portal_farms"), {"farm": farm}).status_code == 404
    assert "Low Croft" in client.get(reverse("portal_home")).content.decode()


def test_a_farm_where_a_person_may_less_gives_them_no_more_than_there(house, client):
    other = make_farm(house.business, "High Croft", by=house.owner)
    let_in(house.memberships[Role.FARM], other)
    client.post(reverse("portal_farms"), {"farm": other.pk})
    assert client.get(reverse("portal_money")).status_code == 403
    client.post(reverse("portal_farms"), {"farm": house.farm.pk})
    assert client.get(reverse("portal_money")).status_code == 200


ONE_COW = {"what": "routine", "head_count": 3, "due_from": "2999-01-01", "due_until": "2999-01-02"}
WITHOUT_A_ROW = {
    "portal_wish": ONE_COW,
    "portal_hold": ONE_COW,
    "portal_scores": {"scored_on": "2026-03-02", "scale": "UK0-3", "lines": "101 2"},
    "portal_calendar": {"name": "Phone"},
    "portal_vet": {"vet_name": "A. Vet", "shows": ["shows_cows"], "days": 30},
    "portal_erase": {"note": "We retire"},
    "portal_data_all": {},
}


SHOWN_ON = {"portal_wish": "portal_ask", "portal_hold": "portal_ask", "portal_data_all": "portal_data"}


def test_a_form_shown_for_one_farm_does_nothing_at_the_one_chosen_since_in_another_tab(house, client):
    other = make_farm(house.business, "The Far Croft", by=house.owner)
    access = let_in(house.memberships[Role.FARM], other)
    give_farm_rights(access=access, rights=set(FarmRight))
    for name in WITHOUT_A_ROW:
        shown = client.get(reverse(SHOWN_ON.get(name, name))).content.decode()
        assert f'name="farm_of_page" value="{house.farm.pk}"' in shown, name
    client.post(reverse("portal_farms"), {"farm": other.pk})
    for name, fields in WITHOUT_A_ROW.items():
        answer = client.post(reverse(name), {**fields, "farm_of_page": house.farm.pk})
        assert answer.status_code == 409, name
        assert "you are at The Far Croft by now" in answer.content.decode()
    for model in (Visit, MobilityScoring, CalendarAddress, VetPass, Erasure):
        assert not model.objects.within(house.scope).exists()


def test_a_business_that_closed_its_farm_does_not_shut_a_person_out_of_another(house, client):
    business = make_business("Fell & Beck")
    let_in(make_member(business, Role.FARM, house.client), make_farm(business, "Fell Foot", by=house.owner))
    house.farm.is_active = False
    house.farm.save()
    assert "Fell Foot" in client.get(reverse("portal_home")).content.decode()
