"""The bank over the API: files, columns, proposals, bookings."""

import base64

import pytest

from invoicing.models import BankFile
from tests.invoicing.api.conftest import refusal
from tests.invoicing.issued_papers import issued
from tests.walls.furnished_payments import XML

CSV = "Day;Amount;Who;What\n02.03.2026;12,50;A. Farmer;{number}\n03.03.2026;-4,00;Shop;Feed\n"
COLUMNS = {"day": 0, "amount": 1, "party": 2, "text": [3]}


def hand_in(ask, content, name="march.csv"):
    told = {"file_name": name, "content": base64.b64encode(content.encode()).decode()}
    return ask("POST", "/bank-files/", told)


@pytest.fixture
def bill(house):
    return issued(house.farm, "12.50")


@pytest.fixture
def entries(ask, bill):
    """The bookings of a file that was read: money in, money out."""
    file = hand_in(ask, CSV.format(number=bill.number)).json()["file"]
    assert (
        ask("POST", f"/bank-files/{file}/read/", {"mapping": COLUMNS, "keep_as": "Our bank"}).json()["new"]
        == 2
    )
    found = ask("GET", "/bank-entries/?order=id").json()["items"]
    return {entry["party_name"]: entry for entry in found}


def test_a_camt_is_read_at_once_and_once(ask):
    made = hand_in(ask, XML.format(name="S1"), "march.xml")
    assert (made.status_code, made.json()["is_read"], made.json()["new"]) == (201, True, 1)
    assert ask("GET", f"/bank-files/{made.json()['file']}/").json()["file_name"] == "march.xml"
    assert refusal(hand_in(ask, XML.format(name="S1"))) == (409, "bank_file_refused")
    again = hand_in(ask, XML.format(name="S1") + "\n").json()
    assert (again["new"], again["known"]) == (0, 1)


def test_a_file_that_cannot_be_read_is_not_kept(ask, house):
    assert refusal(hand_in(ask, "<Document>")) == (409, "bank_file_refused")
    assert not BankFile.objects.within(house.scope).exists()


def test_of_a_csv_the_columns_are_told(ask, bill):
    file = hand_in(ask, CSV.format(number=bill.number)).json()
    assert (file["is_read"], file["new"]) == (False, 0)
    told = ask("GET", f"/bank-files/{file['file']}/columns/").json()
    assert (told["mapping"]["delimiter"], told["mapping"]["day_format"], told["mapping"]["day"]) == (
        *(";", "%d.%m.%Y"),
        0,
    )
    assert told["rows"][0] == ["Day", "Amount", "Who", "What"]
    at = f"/bank-files/{file['file']}/read/"
    assert refusal(ask("POST", at, {"mapping": {"day": 0}})) == (409, "mapping_unclear")
    assert refusal(ask("POST", at, {"mapping": {"day": 2, "amount": 1}})) == (409, "bank_file_refused")
    assert ask("POST", at, {"mapping": COLUMNS, "keep_as": "Our bank"}).json()["new"] == 2
    (kept,) = ask("GET", "/bank-mappings/").json()["items"]
    assert (kept["name"], kept["mapping"]["text"]) == ("Our bank", [3])
    assert ask("GET", "/bank-files/?is_waiting=true").json()["items"] == []


def test_a_proposal_is_accepted_as_it_was_seen(ask, house, bill, entries):
    (row,) = ask("GET", "/bank-proposals/").json()["items"]
    best = row["proposals"][0]
    assert (row["id"], best["farm"]) == (entries["A. Farmer"]["id"], house.farm.pk)
    assert best["shares"] == [{"invoice": bill.pk, "amount": "12.50"}]
    assert best["reasons"]
    one = {"entry": row["id"], "farm": best["farm"], "shares": best["shares"]}
    told = ask("POST", "/bank-entries/accept/", {"accepted": [one]}).json()
    assert (len(told["payments"]), told["refused"]) == (1, [])
    again = ask("POST", "/bank-entries/accept/", {"accepted": [one]}).json()
    assert (again["payments"], again["refused"][0]["entry"]) == ([], row["id"])
    assert ask("GET", "/bank-entries/?show=to_match").json()["items"] == []
    assert ask("GET", f"/invoices/{bill.pk}/").json()["paid"] == "paid"


def test_a_booking_is_matched_by_hand_once(ask, house, entries):
    at = f"/bank-entries/{entries['A. Farmer']['id']}"
    made = ask("POST", f"{at}/match/", {"farm": house.farm.pk})
    assert (made.status_code, made.json()["rest"], made.json()["payer_name"]) == (201, "12.50", "A. Farmer")
    assert refusal(ask("POST", f"{at}/match/", {"farm": house.farm.pk})) == (409, "entry_is_done")
    out = f"/bank-entries/{entries['Shop']['id']}"
    both = {"payment": made.json()["id"], "credit_note": None}
    assert ask("POST", f"{out}/paid-back/", both).json()["amount"] == "-4.00"
    assert refusal(ask("POST", f"{out}/paid-back/", {})) == (422, "cannot_be_meant")


def test_a_booking_is_set_aside_and_brought_back(ask, entries):
    at = f"/bank-entries/{entries['Shop']['id']}"
    assert ask("POST", f"{at}/set-aside/", {"because": "Feed"}).json()["set_aside_because"] == "Feed"
    assert refusal(ask("POST", f"{at}/set-aside/", {"because": "Feed"})) == (409, "entry_is_done")
    assert [row["id"] for row in ask("GET", "/bank-entries/?show=done").json()["items"]] == [
        entries["Shop"]["id"]
    ]
    assert ask("POST", f"{at}/bring-back/").json()["set_aside_at"] is None


def send_whole(ask, content, query="", kind="application/octet-stream", key="one"):
    """The file itself, not a body of JSON."""
    return ask.client.generic(
        "POST",
        f"/api/v1/bank-files/whole/{query}",
        content,
        content_type=kind,
        headers={"Idempotency-Key": key},
    )


def test_a_large_file_is_sent_as_it_is(ask):
    long = CSV + "".join(f"04.03.2026;1,00;Shop;{'x' * 200} {n}\n" for n in range(12_000))
    sent = send_whole(ask, long.encode(), "?file_name=march.csv")
    assert (sent.status_code, sent.json()["is_read"], len(long) > 2_000_000) == (201, False, True)
    assert send_whole(ask, long.encode(), "?file_name=march.csv").content == sent.content
    assert refusal(send_whole(ask, b"other", "?file_name=march.csv")) == (409, "idempotency_key_reused")
    read = ask("POST", f"/bank-files/{sent.json()['file']}/read/", {"mapping": COLUMNS}).json()
    assert read["new"] == 12_002
    camt = send_whole(ask, XML.format(name="S7").encode(), key="two").json()
    assert (camt["is_read"], camt["new"]) == (True, 1)
    assert ask("GET", f"/bank-files/{camt['file']}/").json()["file_name"] == "statement"


def test_what_is_no_such_file_is_refused_and_not_kept(ask, house):
    assert refusal(send_whole(ask, b"", key="a")) == (400, "malformed")
    assert refusal(send_whole(ask, b" ", key="e")) == (409, "bank_file_refused")
    assert refusal(send_whole(ask, b"%PDF-1.7", "?file_name=a.csv", key="b")) == (409, "bank_file_refused")
    assert refusal(send_whole(ask, b"x", kind="application/json", key="c")) == (415, "wrong_kind_of_content")
    assert refusal(send_whole(ask, b"x" * (5 * 1024 * 1024 + 1), key="d")) == (413, "too_large")
    assert not BankFile.objects.within(house.scope).exists()
