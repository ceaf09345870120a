"""A program comes in by its token: as whom, how far, and when no more."""

from datetime import timedelta

import pytest
from django.test import Client
from django.utils import timezone

from farms.models import FarmAccess
from tests.factories import House, let_in, make_farm, make_house
from trimops.accounts.actions import Action
from trimops.accounts.models import ApiToken, Membership
from trimops.accounts.roles import Role
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.make_token import TokenWish, givable, make_token
from trimops.accounts.services.revoke_token import revoke_token

FARMS = "/api/v1/farms/"
WEEK = timedelta(days=7)


@pytest.fixture
def house(db) -> House:
    return make_house()


def token_of(house: House, role: Role = Role.OWNER, *scopes: Action, **wish) -> tuple[ApiToken, str]:
    given = TokenWish("Farm office", set(scopes or {Action.SEE_FARMS}), wish.pop("lasts", WEEK), **wish)
    return make_token(membership=house.memberships[role], wish=given, at=timezone.now())


def ask(text, address=FARMS, client=None, **headers):
    return (client or Client()).get(address, headers={"Authorization": f"Bearer {text}", **headers})


def names(answer):
    return [each["name"] for each in answer.json()["items"]]


def assert_not_let_in(answer):
    assert (answer.status_code, answer.json()["code"]) == (401, "not_signed_in")
    assert answer["WWW-Authenticate"] == 'Bearer realm="trimops", error="invalid_token"'
    assert answer.json()["detail"] == "This token is not good: it is unknown, ended or revoked."


def test_a_program_reads_what_its_person_sees(house):
    _, text = token_of(house)
    assert names(ask(text)) == [house.farm.name]
    # The scheme's name is written as one likes (RFC 9110, 11.1).
    assert Client().get(FARMS, headers={"Authorization": f"bearer {text}"}).status_code == 200


def test_only_the_hash_is_kept_and_the_text_is_long_and_known_to_scanners(house):
    token, text = token_of(house)
    assert text.startswith("trimops_")
    assert len(text) == 8 + 64
    kept = [str(getattr(token, field.attname)) for field in ApiToken._meta.fields]
    assert not any(text in value for value in kept)
    assert len(token.digest) == 128


def test_a_scope_that_the_token_has_not_is_refused(house):
    _, text = token_of(house, Role.OWNER, Action.SEE_COWS)
    refused = ask(text)
    assert (refused.status_code, refused.json()["code"]) == (403, "not_allowed")


def test_an_address_that_names_no_action_is_in_no_tokens_scope(house):
    _, text = token_of(house, Role.OWNER, *givable(Role.OWNER))
    pages = Client().get("/people/", headers={"Authorization": f"Bearer {text}"})
    assert pages.status_code == 302
    assert "/account/login/" in pages["Location"]


def test_a_stranger_hears_how_to_come_in(db):
    answer = Client().get(FARMS)
    assert (answer.status_code, answer["WWW-Authenticate"]) == (401, 'Bearer realm="trimops"')


@pytest.mark.parametrize(
    "text",
    ["", "x", "trimops_", "trimops_" + "0" * 64, "trimops_" + "0" * 63 + "é", "a b", "trimops_" + "0" * 5000],
)
def test_what_is_no_token_is_refused_in_the_same_words(house, text):
    assert_not_let_in(ask(text.encode().decode("latin-1")))


def test_an_ended_a_revoked_and_a_left_token_are_refused_alike_and_stay_in_the_list(house):
    now = timezone.now()
    ended, left, revoked = (token_of(house, role) for role in (Role.OWNER, Role.TRIMMER, Role.OFFICE))
    ApiToken.objects.filter(pk=ended[0].pk).update(expiry=now)
    end_membership(membership=house.memberships[Role.TRIMMER], at=now)
    revoke_token(token=revoked[0], at=now, by=house.owner)
    for _, text in (ended, left, revoked):
        assert_not_let_in(ask(text))
    assert ApiToken.objects.count() == 3


def test_one_who_is_let_in_again_gets_no_old_token_back(house):
    place = house.memberships[Role.TRIMMER]
    _, text = token_of(house, Role.TRIMMER)
    end_membership(membership=place, at=timezone.now())
    Membership.objects.filter(pk=place.pk).update(ended_at=None)
    assert_not_let_in(ask(text))


def test_a_person_who_was_shut_out_has_no_program_inside(house):
    _, text = token_of(house)
    house.owner.is_active = False
    house.owner.save()
    assert_not_let_in(ask(text))


def test_another_part_cuts_what_the_token_may(house):
    _, text = token_of(house, Role.OWNER, Action.SEE_FARMS, Action.KEEP_MONEY)
    place = house.memberships[Role.OWNER]
    place.role = Role.TRIMMER
    place.save()
    assert ask(text).status_code == 200
    _, client_text = token_of(house, Role.OFFICE)
    house.memberships[Role.OFFICE].role = Role.FARM
    house.memberships[Role.OFFICE].save()
    assert ask(client_text).status_code == 403


def test_whoever_shows_a_token_is_judged_by_it_alone(house):
    client = Client()
    client.force_login(house.owner)
    assert client.get(FARMS).status_code == 200
    assert_not_let_in(ask("trimops_" + "0" * 64, client=client))


def test_a_farm_clients_token_sees_its_one_farm_and_turns_to_no_other(house):
    place = house.memberships[Role.FARM]
    other = make_farm(house.business, "Aa Croft", by=house.owner)
    let_in(place, other)
    _, text = token_of(house, Role.FARM, farm_key=house.farm.pk)
    assert names(ask(text)) == [house.farm.name]
    FarmAccess.objects.within(house.scope).filter(membership=place, farm=house.farm).delete()
    assert ask(text).status_code == 403


def test_its_last_use_is_kept_with_the_address_at_most_every_ten_minutes(
    house, django_assert_max_num_queries
):
    token, text = token_of(house)
    ask(text)
    token.refresh_from_db()
    first = token.last_used_at
    assert (timezone.now() - first).total_seconds() < 60
    assert token.last_used_from == "127.0.0.1"
    with django_assert_max_num_queries(4):
        ask(text)
    token.refresh_from_db()
    assert token.last_used_at == first


def test_a_program_needs_no_form_token_of_a_browser(house):
    client = Client(enforce_csrf_checks=True)
    _, text = token_of(house, Role.OWNER, Action.KEEP_FARMS)
    body = '{"name": "Upper", "latitude": "54.1", "longitude": "-2.3"}'
    given = {"Authorization": f"Bearer {text}", "Idempotency-Key": "k"}
    answer = client.post(FARMS, body, content_type="application/json", headers=given)
    assert answer.status_code == 201


def test_no_log_holds_the_token(house, caplog):
    _, text = token_of(house)
    ask(text, address=f"/api/v1/nothing/{text}")
    assert text not in caplog.text
