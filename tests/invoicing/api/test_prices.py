"""Prices, tax rates, agreements, terms and money rules over the API."""

import base64

import pytest

from invoicing.models import MoneyRules, PriceList
from tests.factories import make_prices
from tests.invoicing.api.conftest import refusal
from tests.invoicing.drafts import draft, issue
from tests.walls.furnished import PICTURE

SHEET = {
    "name": "Summer",
    "valid_from": "2026-06-01",
    "prices": [
        {
            "item": "functional",
            "tax_code": "usual",
            "steps": [
                {"from_quantity": 1, "unit_price": "12.00"},
                {"from_quantity": 21, "unit_price": "10.50"},
            ],
        }
    ],
    "bands": [{"up_to": "10.0", "price": "8.00"}, {"up_to": None, "price": "20.00"}],
    "usual_from": "07:00",
}


@pytest.fixture
def prices(house):
    return make_prices(house.business)


def sheet(**changes):
    return {**SHEET, **changes}


def test_a_list_is_set_read_mended_and_dropped(ask, house, prices):
    made = ask("POST", "/price-lists/", SHEET)
    assert made.status_code == 201
    told = made.json()
    assert (told["prices"][0]["steps"][1]["from_quantity"], told["usual_weekdays"]) == (21, [1, 2, 3, 4, 5])
    at = f"/price-lists/{told['id']}/"
    assert made["Location"].endswith(at)
    mended = ask("PATCH", at, {"name": "June", "usual_until": "18:00"}).json()
    assert (mended["name"], mended["usual_from"], mended["bands"]) == ("June", "07:00", told["bands"])
    assert mended["prices"] == told["prices"]
    assert [row["name"] for row in ask("GET", "/price-lists/").json()["items"]] == ["June", prices.name]
    assert ask("DELETE", at).status_code == 204
    assert PriceList.objects.within(house.scope).count() == 1


@pytest.mark.parametrize(
    ("changes", "refused"),
    [
        ({"usual_until": "06:00"}, (422, "cannot_be_meant")),
        ({"prices": SHEET["prices"] * 2}, (422, "cannot_be_meant")),
        (
            {"prices": [{**SHEET["prices"][0], "steps": [{"from_quantity": 2, "unit_price": "1"}]}]},
            (422, "cannot_be_meant"),
        ),
        ({"bands": SHEET["bands"][::-1]}, (422, "cannot_be_meant")),
        ({"prices": [{**SHEET["prices"][0], "tax_code": "no-such"}]}, (409, "tax_rate_unknown")),
        ({"travel_rule": "distance"}, (409, "travel_price_missing")),
        ({"usual_from": "7 o'clock"}, (400, "malformed")),
    ],
)
def test_a_list_that_cannot_be_is_not_kept(ask, prices, changes, refused):
    assert refusal(ask("POST", "/price-lists/", sheet(**changes))) == refused


def test_prices_and_rates_that_were_billed_at_stay(ask, house, prices):
    issue(draft(house), house)
    assert refusal(ask("PATCH", f"/price-lists/{prices.pk}/", {"name": "Other"})) == (409, "prices_billed_on")
    (rate,) = ask("GET", "/tax-rates/?code=usual").json()["items"]
    assert refusal(ask("PATCH", f"/tax-rates/{rate['id']}/", {"percent": "25"})) == (409, "rate_billed_on")
    assert refusal(ask("DELETE", f"/tax-rates/{rate['id']}/")) == (409, "rate_billed_on")


def test_a_tax_rate_is_set_mended_and_dropped(ask, house):
    rate = {"code": "low", "category": "S", "percent": "5", "valid_from": "2026-01-01"}
    made = ask("POST", "/tax-rates/", rate).json()
    at = f"/tax-rates/{made['id']}/"
    assert ask("PATCH", at, {"percent": "7.5"}).json()["percent"] == "7.50"
    assert refusal(ask("PATCH", at, {"category": "E"})) == (409, "rate_makes_no_sense")
    assert refusal(ask("POST", "/tax-rates/", rate)) == (409, "rate_holds_then")
    assert ask("DELETE", at).status_code == 204
    told = ask("GET", "/tax-suggestions/").json()
    assert (told["country"], told["tax_name"]) == ("GB", "VAT")
    assert all(rate["source"] for rate in told["rates"])


def test_something_is_agreed_with_a_farm_and_ends(ask, house):
    at = f"/farms/{house.farm.pk}/agreements/"
    word = {"kind": "percent", "amount": "5", "why": "Large herd", "valid_from": "2026-01-01"}
    made = ask("POST", at, word)
    assert (made.status_code, made.json()["item"]) == (201, None)
    assert ask("GET", made["Location"].removeprefix("/api/v1")).json() == made.json()
    assert refusal(ask("POST", at, {**word, "kind": "price"})) == (409, "agreement_makes_no_sense")
    ended = ask("POST", f"/agreements/{made.json()['id']}/end/").json()["agreement"]
    assert ended["valid_until"] is not None
    later = ask("POST", at, {**word, "valid_from": "2099-01-01"}).json()["id"]
    assert ask("POST", f"/agreements/{later}/end/").json() == {"agreement": None}


def test_how_a_farm_is_billed_is_changed_under_its_version(ask, house):
    at = f"/farms/{house.farm.pk}/terms/"
    read = ask("GET", at)
    assert (read.json()["rhythm"], read.json()["send_to"], read.json()["country"]) == ("visit", [], "")
    told = {"rhythm": "month", "send_to": ["office@farm.example"], "country": "IE"}
    changed = ask("PATCH", at, told, If_Match=read["ETag"])
    assert {name: changed.json()[name] for name in told} == told
    assert refusal(ask("PATCH", at, {"note": "x"}, If_Match=read["ETag"])) == (412, "stale")
    assert ask("PATCH", at, {"note": "Rings first"}).json()["country"] == "IE"
    assert refusal(ask("PATCH", at, {"tax_code": "no-such"})) == (409, "tax_code_unknown")
    assert refusal(ask("PATCH", at, {"country": "ZZ"})) == (422, "cannot_be_meant")


def test_how_the_money_is_kept_is_changed(ask, house):
    assert ask("GET", "/money-rules/").json()["invoice_prefix"] == "INV"
    told = {
        "invoice_prefix": "ASH",
        "reminder_days": [7, 21],
        "fixed_sums": [{"debt": "1000", "sum": "70.00"}],
    }
    changed = ask("PATCH", "/money-rules/", told).json()
    assert (changed["invoice_prefix"], changed["reminder_days"]) == ("ASH", [7, 21])
    assert changed["fixed_sums"] == [{"debt": "1000.00", "sum": "70.00"}]
    assert MoneyRules.objects.within(house.scope).get().fixed_sums == [["1000.00", "70.00"]]
    assert refusal(ask("PATCH", "/money-rules/", {"iban": "GB00"})) == (409, "rules_make_no_sense")
    assert refusal(ask("PATCH", "/money-rules/", {"reminder_days": [21, 7]})) == (409, "rules_make_no_sense")
    assert ask("PATCH", "/money-rules/", {"tax_name": "TVA"}).json()["reminder_days"] == [7, 21]


def test_the_logo_is_set_and_taken_off(ask):
    picture = base64.b64encode(PICTURE).decode()
    assert ask("POST", "/money-rules/logo/", {"picture": picture}).json()["has_logo"] is True
    assert ask("GET", "/money-rules/logo/").json()["picture"]
    assert refusal(ask("POST", "/money-rules/logo/", {"picture": "AAAA"})) == (409, "rules_make_no_sense")
    assert ask("POST", "/money-rules/logo/", {"picture": None}).json()["has_logo"] is False
    assert ask("GET", "/money-rules/logo/").json() == {"picture": None}
