"""How often the API and the addresses with a key in them may be asked."""

from datetime import timedelta

import pytest
from django.test import Client, RequestFactory
from django.utils import timezone
from redis.exceptions import ConnectionError as NoRedis

from tests.factories import House, make_house
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.accounts.services.make_token import TokenWish, make_token
from trimops.kernel.secret_link import new_secret
from trimops.web import counted
from trimops.web.client_address import client_address

FARMS = "/api/v1/farms/"

pytestmark = pytest.mark.usefixtures("same_window")


@pytest.fixture
def house(db) -> House:
    return make_house()


def bearer(house, role=Role.OWNER):
    wish = TokenWish("x", {Action.SEE_FARMS}, timedelta(days=9))
    return make_token(membership=house.memberships[role], wish=wish, at=timezone.now())[1]


def ask(text="", client=None, **meta):
    headers = {"Authorization": f"Bearer {text}"} if text else {}
    return (client or Client()).get(FARMS, headers=headers, **meta)


def test_each_token_and_each_person_has_a_measure_of_their_own(house, settings):
    settings.API_RATE = 2
    first, second = bearer(house), bearer(house)
    assert [ask(first).status_code for _ in range(3)] == [200, 200, 429]
    assert ask(second).status_code == 200
    client = Client()
    client.force_login(house.owner)
    assert [ask(client=client).status_code for _ in range(3)] == [200, 200, 429]


def test_too_often_is_a_problem_that_says_when_to_come_again(house, settings):
    settings.API_RATE = 1
    text = bearer(house)
    ask(text)
    refused = ask(text)
    assert (refused["Content-Type"], refused.json()["code"]) == ("application/problem+json", "too_often")
    # 1,800,000,010 is ten seconds into a minute.
    assert refused["Retry-After"] == "50"


def test_a_stranger_who_tries_tokens_is_slowed_by_address(house, settings):
    settings.API_STRANGER_RATE = 3
    told = [ask("trimops_" + f"{number:064x}").status_code for number in range(4)]
    assert told == [401, 401, 401, 429]
    assert ask("trimops_" + "0" * 64, REMOTE_ADDR="203.0.113.9").status_code == 401
    assert ask(bearer(house)).status_code == 200


def test_wrong_keys_in_addresses_are_slowed_by_machine_and_right_ones_wait_with_it(house, settings):
    settings.WRONG_LINKS_RATE = 4
    paths = ("/bill/{}/", "/for-the-vet/{}/", "/list/{}/", "/stop/{}/")
    told = [Client().get(path.format(new_secret())).status_code for path in (*paths, *paths)]
    assert all(status in (404, 410) for status in told[:4])
    assert told[4:] == [429] * 4
    waits = Client().get(paths[0].format(new_secret()))
    assert "lead nowhere" in waits.content.decode()
    assert 0 < int(waits["Retry-After"]) <= 3600
    assert Client().get("/account/login/").status_code == 200
    other = Client().get(paths[0].format(new_secret()), REMOTE_ADDR="203.0.113.9")
    assert other.status_code in (404, 410)


def test_without_the_cache_the_limits_hold_and_nobody_is_kept_from_their_work(
    house, settings, monkeypatch, caplog
):
    settings.API_RATE = settings.WRONG_LINKS_RATE = 2
    counted.OWN.clear()

    class Gone:
        def add(self, *args, **kwargs):
            raise NoRedis

        get = incr = add

    monkeypatch.setattr(counted, "cache", Gone())
    text = bearer(house)
    assert [ask(text).status_code for _ in range(3)] == [200, 200, 429]
    assert ask(bearer(house)).status_code == 200
    told = [Client().get(f"/bill/{new_secret()}/").status_code for _ in range(3)]
    assert told[2] == 429
    assert 429 not in told[:2]
    assert "api is counted by each process for itself" in caplog.text
    counted.OWN.clear()


@pytest.mark.parametrize(
    ("proxies", "told", "address"),
    [
        (0, "198.51.100.1", "127.0.0.1"),
        (1, "198.51.100.1", "198.51.100.1"),
        (1, "6.6.6.6, 198.51.100.1", "198.51.100.1"),
        (2, "6.6.6.6, 198.51.100.1, 10.0.0.1", "198.51.100.1"),
        (2, "198.51.100.1", "198.51.100.1"),
        (1, "", "127.0.0.1"),
        (1, "<script>", None),
        (1, "2001:DB8::1", "2001:db8::1"),
    ],
)
def test_only_what_our_own_proxies_wrote_is_believed(settings, proxies, told, address):
    settings.PROXIES = proxies
    asked = RequestFactory().get("/", headers={"X-Forwarded-For": told} if told else {})
    assert client_address(asked) == address


def test_many_places_do_not_have_the_counts_of_others_forgotten():
    counted.count_one("one", 60)
    for number in range(1_000):
        counted.count_one(f"place-{number}", 60)
    assert counted.counted("one", 60)[0] == 1
