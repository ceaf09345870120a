"""Drafts over the API: made, changed by hand, issued once."""

import pytest

from invoicing.models import Invoice, TaxRate
from tests.factories import make_prices, under_way
from tests.invoicing.api.conftest import refusal
from tests.invoicing.drafts import plain_draft
from tests.invoicing.services.billing import late_cow, worked

WHY = {"reason": "Agreed on the telephone"}


@pytest.fixture
def visit(house):
    make_prices(house.business)
    return worked(house)


@pytest.fixture
def drafted(ask, visit):
    made = ask("POST", f"/visits/{visit.pk}/draft-invoice/").json()["invoice"]
    return ask("GET", f"/drafts/{made}/").json()


def items(draft):
    return [line["item"] for line in draft["lines"]]


def test_a_finished_visit_becomes_a_draft_with_the_reason_of_each_line(ask, visit, drafted):
    assert (drafted["visit"], drafted["state"], drafted["net"]) == (visit.pk, "draft", "40.00")
    assert all(line["why"] for line in drafted["lines"])
    assert ask("GET", "/drafts/?is_ready=true").json()["items"][0]["id"] == drafted["id"]


def test_work_that_is_not_finished_is_not_billed(ask, house):
    begun = under_way(house.farm, house.van)
    assert refusal(ask("POST", f"/visits/{begun.pk}/draft-invoice/")) == (409, "visit_not_finished")
    assert refusal(ask("POST", f"/visits/{begun.pk}/leave-unbilled/", WHY)) == (409, "nothing_to_leave")


def test_all_that_is_ready_is_drafted_and_what_is_left_unbilled_is_not(ask, house, visit):
    second = worked(house, 1, days=1)
    assert ask("GET", "/ready-to-bill/").json()["visits"] == [visit.pk, second.pk]
    assert ask("POST", f"/visits/{second.pk}/leave-unbilled/", WHY).json() == {"pieces": 3}
    made = ask("POST", "/drafts/draft-ready/").json()
    assert (len(made["drafts"]), made["free"], made["refused"]) == (1, [], [])
    assert ask("POST", f"/visits/{second.pk}/bill-after-all/").json() == {"pieces": 3}
    month = ask("POST", f"/farms/{house.farm.pk}/draft-month/", {"month": "2026-03-20"}).json()["invoice"]
    told = ask("GET", f"/drafts/{month}/").json()
    assert (told["period_from"], told["period_until"], told["visit"]) == ("2026-03-01", "2026-03-31", None)


def test_a_line_is_changed_put_in_and_struck_each_with_a_reason(ask, house, drafted):
    line = drafted["lines"][0]["id"]
    read = ask("GET", f"/draft-lines/{line}/")
    change = {"quantity": "2", "discount_percent": "10", **WHY}
    changed = ask("PATCH", f"/draft-lines/{line}/", change, If_Match=read["ETag"])
    assert (changed.json()["quantity"], changed.json()["net"]) == ("2.0000", "18.00")
    assert refusal(ask("PATCH", f"/draft-lines/{line}/", change, If_Match=read["ETag"])) == (412, "stale")
    kept = ask("PATCH", f"/draft-lines/{line}/", {"description": "Two cows", **WHY}).json()
    assert (kept["description"], kept["allowance_percent"]) == ("Two cows", "10.0000")
    assert refusal(ask("PATCH", f"/draft-lines/{line}/", {"quantity": "3"})) == (409, "reason_missing")
    rate = TaxRate.objects.within(house.scope).get(code="usual")
    more = {"description": "Gate left open", "quantity": "1", "unit_price": "5", "tax_rate": rate.pk, **WHY}
    assert items(ask("POST", f"/drafts/{drafted['id']}/lines/", more).json())[-1] == "other"
    struck = ask("POST", f"/draft-lines/{line}/strike/", WHY).json()
    assert [left["not_billed_because"] for left in struck["left_off"]] == [WHY["reason"]]
    assert len(struck["edits"]) == 4


def test_a_discount_on_the_whole_comes_and_goes(ask, drafted):
    at = f"/drafts/{drafted['id']}"
    off = ask("POST", f"{at}/amounts/", {"percent": "10", **WHY}).json()
    assert (off["allowances"], off["net"]) == ("4.00", "36.00")
    both = {"percent": "10", "amount": "1", "reason": "Both"}
    assert refusal(ask("POST", f"{at}/amounts/", both)) == (409, "change_refused")
    half = {"percent": "10", "tax_category": "S", **WHY}
    assert refusal(ask("POST", f"{at}/amounts/", half)) == (422, "cannot_be_meant")
    (amount,) = off["document_amounts"]
    assert ask("POST", f"/draft-amounts/{amount['id']}/drop/", WHY).json()["net"] == "40.00"


def test_what_stands_above_the_lines_is_changed_and_the_rest_stays(ask, drafted):
    at = f"/drafts/{drafted['id']}/"
    assert ask("PATCH", at, {"note": "Thank you", "prepaid": "8.00", **WHY}).json()["payable"] == "40.00"
    told = ask("PATCH", at, {"order_number": "PO 7", **WHY}).json()
    assert (told["note"], told["order_number"], told["prepaid"]) == ("Thank you", "PO 7", "8.00")
    assert refusal(ask("PATCH", at, {"prepaid": "900", **WHY})) == (409, "change_refused")


def test_a_draft_is_made_anew_or_thrown_away(ask, visit, drafted):
    at = f"/drafts/{drafted['id']}"
    ask("POST", f"{at}/amounts/", {"percent": "10", **WHY})
    assert ask("POST", f"{at}/anew/", WHY).json() == {"invoice": drafted["id"]}
    read = ask("GET", f"{at}/")
    assert read.json()["net"] == "40.00"
    assert refusal(ask("DELETE", f"{at}/", If_Match='"another"')) == (412, "stale")
    assert ask("DELETE", f"{at}/", If_Match=read["ETag"]).status_code == 204
    assert refusal(ask("GET", f"{at}/")) == (404, "not_found")
    assert ask("GET", "/ready-to-bill/").json()["visits"] == [visit.pk]


def test_a_draft_is_issued_once_and_the_second_hears_why(ask, drafted):
    at = f"/drafts/{drafted['id']}"
    first = ask("POST", f"{at}/issue/", {}, Idempotency_Key="evening")
    assert (first.status_code, first.json()["state"], first.json()["paid"]) == (200, "issued", "open")
    again = ask("POST", f"{at}/issue/", {}, Idempotency_Key="evening")
    assert again.json() == first.json()
    refused = ask("POST", f"{at}/issue/", {})
    assert refusal(refused) == (409, "already_issued")
    assert first.json()["number"] in refused.json()["detail"]
    assert refusal(ask("GET", f"{at}/")) == (404, "not_found")
    assert refusal(ask("POST", f"{at}/anew/", WHY)) == (409, "not_a_draft")


def test_what_cannot_be_sent_is_not_issued_either(ask, house, drafted):
    assert refusal(ask("POST", f"/drafts/{drafted['id']}/issue/", {"send": True})) == (409, "no_address")
    assert not Invoice.objects.within(house.scope).issued().exists()


def test_many_are_asked_for_at_once(ask, house, drafted):
    other = plain_draft(house)
    assert ask("POST", "/drafts/issue/", {"drafts": [other.pk]}).json() == {"asked": 1}
    told = ask("POST", "/drafts/issue/", {})
    assert (told.status_code, told.json()["asked"]) == (202, 2)
    assert refusal(ask("POST", "/drafts/issue/", {"drafts": [987654321]})) == (422, "cannot_be_meant")


def test_work_that_came_late_is_told_and_drafted(ask, house, visit, drafted):
    ask("POST", f"/drafts/{drafted['id']}/issue/", {})
    at = f"/visits/{visit.pk}/late-work/"
    assert ask("GET", at).json() == {"added": [], "gone": []}
    assert refusal(ask("POST", at, WHY)) == (409, "bill_fits")
    late_cow(house, visit)
    (added,) = ask("GET", at).json()["added"]
    assert (added["item"], added["words"].startswith("cow L")) == ("functional", True)
    (made,) = ask("POST", at, WHY).json()["invoices"]
    assert items(ask("GET", f"/drafts/{made}/").json()) == ["functional"]
