"""The office, the lists, one invoice: what the office reads and presses."""

from datetime import date, timedelta
from decimal import Decimal as D

from django.urls import reverse
from django.utils import timezone

from farms.models import Payer
from invoicing.models import DraftEdit, FarmTerms, Invoice, Sending
from invoicing.services.draft_invoice import draft_invoice
from tests.factories import make_farm, make_prices
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.billing import late_cow, line_of, lines_of, worked

TODAY = timezone.now().date()


def page(client, name, *args, query=""):
    answer = client.get(reverse(name, args=args) + query)
    assert answer.status_code == 200
    return " ".join(answer.content.decode().split())


def title(words):
    return words.split("<title>")[1].split(" – ")[0]


def test_the_desk_says_what_is_to_be_billed_sent_and_paid(house, office):
    plain_draft(house, "10.00")
    plain_draft(house, "20.00")
    issued(house.farm, "40.00", TODAY - timedelta(days=60))
    issued(house.farm, "50.00", TODAY)
    words = page(office, "invoice_list")
    assert title(words) == "2 drafts for £36.00, £40.00 overdue"
    assert "£90.00" in words  # all that is to be paid


def test_an_empty_desk_says_so(office):
    assert title(page(office, "invoice_list")) == "Everything is billed, nothing is overdue"


def test_issued_invoices_are_found_by_number_farm_payer_year_and_state(house, office):
    other = make_farm(house.business, "High Croft", by=house.owner)
    other.payer = Payer.objects.create(business=house.business, name="The Estate")
    other.save()
    issued(house.farm, "40.00", date(2026, 2, 2), number="INV-2026-0101")
    issued(other, "50.00", date(2025, 2, 2), number="INV-2025-0007", is_open=False)
    found = {
        "": "2 issued for £90.00",
        "?q=0101": "1 issued for £40.00",
        "?q=high": "1 issued for £50.00",
        "?q=estate+2025": "1 issued for £50.00",
        "?year=2025": "1 issued for £50.00",
        "?show=open": "1 issued for £40.00",
        "?show=overdue": "1 issued for £40.00",
        "?show=credit": "Nothing issued fits that",
        "?year=9x&show=drop%20table&page=77": "2 issued for £90.00",
    }
    for query, told in found.items():
        assert title(page(office, "invoice_issued", query=query)).startswith(told), query


def test_a_draft_tells_why_each_line_is_there(house, office):
    make_prices(house.business)
    invoice = draft_invoice(visit=worked(house), at=timezone.now())
    words = page(office, "invoice", invoice.pk)
    assert title(words) == "Draft for Low Croft: £48.00"
    assert "Block, left hind, inner claw" in words
    assert reverse("cow", args=[invoice.visit.trims.within(house.scope).first().cow_id]) in words
    bill = office.get(reverse("visit_bill", args=[invoice.visit_id]))
    assert bill["Location"] == reverse("invoice", args=[invoice.pk])


def test_a_line_is_changed_struck_and_put_in_with_a_reason(house, office):
    make_prices(house.business)
    invoice = draft_invoice(visit=worked(house), at=timezone.now())
    block = reverse("invoice_line", args=[line_of(invoice, "block").pk])
    change = {"description": "Block", "quantity": "1", "percent": "50", "reason": ""}
    assert office.post(block, change).status_code == 400
    assert office.post(block, {**change, "reason": "Half price"}).status_code == 302
    assert line_of(invoice, "block").net == 5
    line = {"description": "Powder", "quantity": "2", "unit_price": "7,25", "reason": "Sold"}
    form = office.get(reverse("invoice_line_new", args=[invoice.pk])).context["form"]
    line["tax"] = form.fields["tax"].choices[0][0]
    assert office.post(reverse("invoice_line_new", args=[invoice.pk]), line).status_code == 302
    cow = reverse("invoice_line", args=[line_of(invoice, "corrective").pk])
    strike = {"description": "Trim", "quantity": "1", "reason": "Not ours", "act": "strike"}
    assert office.post(cow, strike).status_code == 302
    assert set(lines_of(invoice)) == {"functional", "block", "call_out", "other"}
    words = page(office, "invoice", invoice.pk)
    assert "Not ours" in words
    assert DraftEdit.objects.within(house.scope).count() == 3


def test_the_whole_is_discounted_and_that_is_taken_back(house, office):
    invoice = plain_draft(house, "100.00")
    whole = reverse("invoice_whole", args=[invoice.pk])
    too_much = {"what": "off", "amount": "100.01", "reason": "x"}
    assert office.post(whole, too_much).status_code == 400
    assert office.post(whole, {"what": "off", "percent": "10", "reason": "Large herd"}).status_code == 302
    row = invoice.document_amounts.within(house.scope).get()
    assert (row.amount, row.reason) == (10, "Large herd")
    drop = reverse("invoice_whole_drop", args=[row.pk])
    assert office.post(drop).status_code == 409
    assert office.post(drop, {"reason": "Taken off again"}).status_code == 302
    invoice.refresh_from_db()
    assert invoice.gross == 120


def test_order_number_and_what_was_paid_before_are_put_on(house, office):
    invoice = plain_draft(house, "100.00")
    head = {"order_number": "PO 7", "note": "", "prepaid": "20", "reason": "They rang"}
    assert office.post(reverse("invoice_head", args=[invoice.pk]), head).status_code == 302
    invoice.refresh_from_db()
    assert (invoice.order_number, invoice.payable) == ("PO 7", 100)
    assert (
        office.post(reverse("invoice_head", args=[invoice.pk]), {**head, "prepaid": "121"}).status_code == 400
    )


def test_issue_and_send_issues_queues_the_mail_and_opens_the_next_draft(house, office):
    first, second = plain_draft(house, "10.00"), plain_draft(house, "20.00")
    FarmTerms.objects.create(business=house.business, farm=house.farm, send_to=["farm@example.invalid"])
    answer = office.post(reverse("invoice", args=[first.pk]), {"act": "send"})
    assert answer["Location"] == reverse("invoice", args=[second.pk])
    first.refresh_from_db()
    assert first.is_issued
    assert Sending.objects.within(house.scope).get().invoice == first


def test_without_an_address_nothing_is_issued_either(house, office):
    draft = plain_draft(house, "10.00")
    answer = office.post(reverse("invoice", args=[draft.pk]), {"act": "send"})
    assert answer.status_code == 409
    draft.refresh_from_db()
    assert not draft.is_issued


def test_an_issued_invoice_is_not_edited(house, office):
    paper = issued(house.farm, "40.00")
    for name in ("invoice_line_new", "invoice_whole", "invoice_head", "invoice_undo"):
        assert office.get(reverse(name, args=[paper.pk])).status_code == 409
        assert office.post(reverse(name, args=[paper.pk])).status_code == 409


def test_a_credit_note_is_drafted_from_the_page(house, office):
    make_prices(house.business)
    draft = draft_invoice(visit=worked(house), at=timezone.now())
    assert office.post(reverse("invoice", args=[draft.pk])).status_code == 302
    address = reverse("invoice_credit", args=[draft.pk])
    block = line_of(draft, "block").pk
    assert "Everything" not in page(office, "invoice_credit", draft.pk)
    assert office.post(address, {"what": "some", "reason": "x"}).status_code == 400
    assert office.post(address, {"what": "all", "reason": ""}).status_code == 400
    both = {"what": "some", "reason": "x", f"quantity_{block}": "1", f"amount_{block}": "1"}
    assert office.post(address, both).status_code == 400
    some = {"what": "some", "reason": "Fell off", f"amount_{block}": "2,50"}
    assert office.post(address, some).status_code == 302
    note = Invoice.objects.within(house.scope).credit_notes().get()
    assert (note.net, note.reason, note.corrects_id) == (D("2.50"), "Fell off", draft.pk)
    assert "Fell off" in page(office, "invoice", draft.pk)


def test_late_work_is_told_on_the_invoice_and_drafted_on_the_offices_word(house, office):
    make_prices(house.business)
    visit = worked(house)
    draft = draft_invoice(visit=visit, at=timezone.now())
    office.post(reverse("invoice", args=[draft.pk]))
    late_cow(house, visit)
    assert "1 piece more" in page(office, "invoice", draft.pk)
    assert "1 piece of work more" in title(page(office, "bill_late", visit.pk))
    answer = office.post(reverse("bill_late", args=[visit.pk]), {"reason": "Came late"})
    extra = Invoice.objects.within(house.scope).drafts().get()
    assert answer["Location"] == reverse("invoice", args=[extra.pk])
    assert lines_of(extra) == {"functional": (1, 10)}


def test_what_is_ready_is_drafted_by_one_press_and_a_missing_price_is_told(house, office):
    visit = worked(house)
    assert title(page(office, "bill_ready")) == "1 visit to draft"
    answer = office.post(reverse("bill_ready"), follow=True)
    assert "No price list holds" in answer.content.decode()
    make_prices(house.business)
    answer = office.post(reverse("bill_ready"))
    draft = Invoice.objects.within(house.scope).get(visit=visit)
    assert answer["Location"] == reverse("invoice", args=[draft.pk])
    undo = {"act": "discard", "reason": "Not now"}
    assert office.post(reverse("invoice_undo", args=[draft.pk]), undo).status_code == 302
    leave = reverse("bill_leave", args=[visit.pk])
    assert office.post(leave, {"reason": ""}).status_code == 400
    assert office.post(leave, {"reason": "A favour"}).status_code == 302
    assert title(page(office, "bill_ready")) == "All finished work is drafted or billed"
    assert office.post(reverse("bill_after_all", args=[visit.pk])).status_code == 302
    assert title(page(office, "bill_ready")) == "1 visit to draft"


def test_all_drafts_that_are_ready_are_issued_at_once(house, office, django_capture_on_commit_callbacks):
    first = plain_draft(house, "10.00")
    month = {"period_from": TODAY.replace(day=1), "period_until": TODAY + timedelta(days=40)}
    running = plain_draft(house, "20.00", **month)
    assert title(page(office, "invoice_issue_all")) == "Issue 1 draft at once?"
    with django_capture_on_commit_callbacks(execute=True):
        assert office.post(reverse("invoice_issue_all"), {"send": "on"}).status_code == 302
    first.refresh_from_db()
    running.refresh_from_db()
    assert (first.is_issued, running.is_issued) == (True, False)
    assert not Sending.objects.within(house.scope).exists(), "no address is known"


def test_enter_does_not_issue_a_month_that_still_runs(house, office):
    month = {"period_from": TODAY.replace(day=1), "period_until": TODAY + timedelta(days=40)}
    running, over = plain_draft(house, "20.00", **month), plain_draft(house, "10.00")
    words = page(office, "invoice", running.pk)
    assert "autofocus" not in words
    assert "Issue it once the month is over" in words
    assert "autofocus" in page(office, "invoice", over.pk)
