from datetime import date
from decimal import Decimal

from invoicing.selectors.statement_content import statement_content
from tests.factories import MONDAY, NOON
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.test_note_payment import note


def test_the_paper_says_what_the_account_says(house):
    bill = issued(house.farm, "100")
    note(house, "40", {bill.pk: Decimal(30)})
    content = statement_content(house.scope, house.farm, date(2026, 2, 1), MONDAY, NOON)
    assert [(line.debit, line.credit, line.balance) for line in content.lines] == [(100, 0, 100), (0, 40, 60)]
    assert (content.opening, content.closing, content.lines[0].due_on) == (0, 60, bill.due_on)
    assert (content.ageing.to_30, content.ageing.unused) == (70, 10)
    assert content.party.name == "Low Croft"


def test_how_old_amounts_were_in_the_past_is_not_told(house):
    issued(house.farm, "100")
    past = statement_content(house.scope, house.farm, date(2026, 1, 1), date(2026, 2, 28), NOON)
    assert past.ageing is None


def test_the_account_of_an_erased_farm_goes_to_whom_its_last_invoice_went(house):
    issued(house.farm, "100", buyer={"name": "The Estate", "address": "The Hall\nNowhere"})
    house.farm.name, house.farm.erased_at = "Erased farm 1", NOON
    house.farm.save()
    content = statement_content(house.scope, house.farm, date(2026, 2, 1), MONDAY, NOON)
    assert (content.party.name, content.party.address) == ("The Estate", ("The Hall", "Nowhere"))
    assert content.closing == 100
