"""The books, the mileage log, the lock and reminders over the API."""

from io import BytesIO

import openpyxl
import pytest

from invoicing.models import MoneyRules
from tests.factories import make_prices
from tests.invoicing.api.conftest import asker, refusal
from tests.invoicing.drafts import draft, issue, plain_draft
from tests.invoicing.issued_papers import issued

MARCH = "first=2026-03-01"
DRIVE = {"on": "2026-03-02", "from_words": "Yard", "to_words": "Bank", "purpose": "Cash", "distance": "12.5"}


@pytest.fixture
def bill(house):
    make_prices(house.business)
    return issue(draft(house), house)


def test_the_books_of_a_month_are_told_and_taken_out(ask, bill):
    told = ask("GET", f"/books/?{MARCH}").json()
    assert (told["first"], told["last"], told["by"]) == ("2026-03-01", "2026-03-31", "issued")
    assert told["sold"] == [{"currency": "GBP", "net": "30.00", "tax": "6.00"}]
    assert {part["part"]: part["row_count"] for part in told["parts"]}["sales-journal"] == 1
    journal = ask("GET", f"/books/sales-journal/?{MARCH}").json()
    (row,) = journal["rows"]
    assert dict(zip(journal["columns"], row, strict=True))["Number"] == bill.number
    assert {"currency": "GBP", "column": "Total", "sum": "36.00"} in journal["sums"]
    csv = ask("GET", f"/books/sales-journal.csv?{MARCH}", Accept="text/csv")
    assert (csv["Content-Type"], bill.number in csv.content.decode("utf-8-sig")) == (
        "text/csv; charset=utf-8",
        True,
    )
    book = openpyxl.load_workbook(BytesIO(ask("GET", f"/books/all.xlsx?{MARCH}").content))
    assert len(book.sheetnames) == 6
    assert ask("GET", f"/books/open.xlsx?{MARCH}").content[:2] == b"PK"


def test_rows_of_a_list_are_asked_for_in_parts(ask, house):
    for _ in range(3):
        issued(house.farm, "10.00")
    told = ask("GET", "/books/open/?first=2026-02-01&from_row=1&rows=1").json()
    assert (told["row_count"], len(told["rows"])) == (3, 1)


@pytest.mark.parametrize(
    ("address", "refused"),
    [
        ("/books/no-such/", (404, "not_found")),
        ("/books/open/?kind=free&first=2026-03-02&last=2026-03-01", (422, "cannot_be_meant")),
        ("/books/open/?kind=week", (400, "malformed")),
        ("/books/open/?rows=1001", (400, "malformed")),
    ],
)
def test_books_that_are_not_there_are_told(ask, address, refused):
    assert refusal(ask("GET", address)) == refused


def test_the_owner_locks_the_books_and_opens_them(ask, house):
    plain_draft(house)
    lock = {"until": "2026-03-31", "why": "The quarter went to the accountant"}
    assert refusal(ask("POST", "/period-lock/", lock)) == (403, "not_allowed")
    owner = asker(house.owner)
    assert refusal(owner("POST", "/period-lock/", lock)) == (409, "drafts_inside")
    told = owner("POST", "/period-lock/", {**lock, "even_so": True}).json()
    assert (told["locked_until"], told["history"][0]["by"]) == ("2026-03-31", house.owner.pk)
    assert refusal(ask("POST", "/journeys/", DRIVE)) == (409, "period_locked")
    assert refusal(owner("POST", "/period-lock/", {**lock, "until": "2100-01-01", "even_so": True})) == (
        409,
        "cannot_lock",
    )
    assert owner("POST", "/period-lock/", {"until": None, "why": "A slip"}).json()["locked_until"] is None
    assert len(ask("GET", "/period-lock/").json()["history"]) == 2


def test_a_drive_is_noted_and_mended(ask, house):
    made = ask("POST", "/journeys/", {**DRIVE, "van": house.van.pk})
    assert (made.status_code, made.json()["unit"], made.json()["is_by_hand"]) == (201, "KMT", True)
    at = f"/journeys/{made.json()['id']}/"
    assert refusal(ask("PATCH", at, {"distance": "13"})) == (409, "journey_refused")
    mended = ask("PATCH", at, {"distance": "13", "because": "Odometer"}).json()
    assert (mended["distance"], mended["reckoned"], mended["mended_because"]) == ("13.0", "12.5", "Odometer")
    assert ask("GET", "/journeys/?on_from=2026-03-03").json()["items"] == []
    assert refusal(ask("POST", "/journeys/", {**DRIVE, "on": "2100-01-01"})) == (409, "journey_refused")


def test_drives_are_taken_from_the_visits_once(ask, bill):
    days = {"first": "2026-03-01", "last": "2026-03-31"}
    assert ask("POST", "/journeys/take-in/", days).json()["new"] > 0
    assert ask("POST", "/journeys/take-in/", days).json()["new"] == 0


def test_rates_are_put_down_by_their_day(ask):
    reference = {"valid_from": "2026-01-01", "percent": "-0.5", "source": "The bank's page"}
    first = ask("POST", "/reference-rates/", reference).json()
    again = ask("POST", "/reference-rates/", {**reference, "percent": "4.25"}).json()
    assert (again["id"], again["percent"]) == (first["id"], "4.250")
    assert ask("GET", f"/reference-rates/{first['id']}/").json() == again
    mileage = {"valid_from": "2026-01-01", "unit": "SMI", "first_rate": "0.45", "source": "The tax office"}
    made = ask("POST", "/mileage-rates/", {**mileage, "up_to": 10000, "then_rate": "0.25"}).json()
    assert (made["first_rate"], made["up_to"]) == ("0.4500", 10000)
    no_day = {**mileage, "year_begins_month": 2, "year_begins_day": 30}
    assert refusal(ask("POST", "/mileage-rates/", no_day)) == (409, "mileage_rate_refused")


def test_reminders_are_put_forward_and_decided_on_by_a_person(ask, house):
    MoneyRules.objects.create(business=house.business, reminder_days=[7, 21])
    bills = [issued(house.farm, "10.00"), issued(house.farm, "20.00")]
    assert ask("POST", "/reminders/propose/").json() == {"new": 2}
    assert ask("POST", "/reminders/propose/").json() == {"new": 0}
    found = {row["invoice"]: row["id"] for row in ask("GET", "/reminders/?state=proposed").json()["items"]}
    first, second = (found[bill.pk] for bill in bills)
    assert ask("GET", f"/reminders/{first}/").json()["today"]["open_amount"] == "10.00"
    assert ask("GET", f"/reminders/{first}/reminder.pdf").content[:4] == b"%PDF"
    gone = ask("POST", f"/reminders/{first}/approve/").json()
    assert (gone["reminder"]["state"], gone["reminder"]["open_amount"], gone["mails"]) == (
        "approved",
        "10.00",
        [],
    )
    assert refusal(ask("POST", f"/reminders/{first}/approve/")) == (409, "already_decided")
    dropped = ask("POST", f"/reminders/{second}/drop/", {"because": "He rang"}).json()
    assert (dropped["state"], dropped["dropped_because"]) == ("dropped", "He rang")
