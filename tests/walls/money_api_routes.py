"""The rows of tests/walls/routes.py for the API of the money, a table for each part."""

from tests.walls.route import Route
from trimops.accounts.actions import Action
from trimops.accounts.roles import EVERYONE

INVOICES_API: dict[str, Route] = {
    "api_invoices": Route(EVERYONE, does={"get": Action.SEE_OWN_BILLS}),
    "api_invoice": Route(EVERYONE, {"pk": "issued"}, does={"get": Action.SEE_OWN_BILLS}),
    "api_invoice_pdf": Route(EVERYONE, {"pk": "issued"}, does={"get": Action.SEE_OWN_BILLS}),
    "api_invoice_cii": Route(EVERYONE, {"pk": "issued"}, does={"get": Action.SEE_OWN_BILLS}),
    "api_invoice_ubl": Route(EVERYONE, {"pk": "issued"}, does={"get": Action.SEE_OWN_BILLS}),
    "api_invoice_send": Route(
        EVERYONE, {"pk": "issued"}, does={"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}
    ),
    "api_invoice_links": Route(
        EVERYONE, {"pk": "issued"}, does={"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}
    ),
    "api_invoice_link_close": Route(EVERYONE, {"pk": "invoice_link"}, does={"post": Action.KEEP_MONEY}),
    "api_money_mails": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_money_mail": Route(EVERYONE, {"pk": "sending"}, does={"get": Action.SEE_MONEY}),
    "api_invoice_credit_left": Route(EVERYONE, {"pk": "issued"}, does={"get": Action.SEE_MONEY}),
    "api_invoice_credit": Route(EVERYONE, {"pk": "issued"}, does={"post": Action.KEEP_MONEY}),
    "api_invoice_write_off": Route(EVERYONE, {"pk": "issued"}, does={"post": Action.KEEP_MONEY}),
    "api_invoice_set_off": Route(EVERYONE, {"pk": "issued"}, does={"post": Action.KEEP_MONEY}),
    "api_invoice_pay_back": Route(EVERYONE, {"pk": "issued"}, does={"post": Action.KEEP_MONEY}),
}
DRAFTS_API: dict[str, Route] = {
    "api_drafts": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_draft_ready": Route(EVERYONE, does={"post": Action.KEEP_MONEY}),
    "api_issue_run": Route(EVERYONE, does={"post": Action.KEEP_MONEY}),
    "api_draft": Route(
        EVERYONE,
        {"pk": "invoice"},
        does={"get": Action.SEE_MONEY, "patch": Action.KEEP_MONEY, "delete": Action.KEEP_MONEY},
    ),
    "api_draft_anew": Route(EVERYONE, {"pk": "invoice"}, does={"post": Action.KEEP_MONEY}),
    "api_draft_issue": Route(EVERYONE, {"pk": "invoice"}, does={"post": Action.KEEP_MONEY}),
    "api_draft_lines": Route(EVERYONE, {"pk": "invoice"}, does={"post": Action.KEEP_MONEY}),
    "api_draft_amounts": Route(EVERYONE, {"pk": "invoice"}, does={"post": Action.KEEP_MONEY}),
    "api_draft_line": Route(
        EVERYONE, {"pk": "invoice_line"}, does={"get": Action.SEE_MONEY, "patch": Action.KEEP_MONEY}
    ),
    "api_draft_line_strike": Route(EVERYONE, {"pk": "invoice_line"}, does={"post": Action.KEEP_MONEY}),
    "api_draft_amount_drop": Route(EVERYONE, {"pk": "invoice_whole"}, does={"post": Action.KEEP_MONEY}),
    "api_ready_to_bill": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_visit_draft_invoice": Route(EVERYONE, {"pk": "finished"}, does={"post": Action.KEEP_MONEY}),
    "api_visit_leave_unbilled": Route(EVERYONE, {"pk": "finished"}, does={"post": Action.KEEP_MONEY}),
    "api_visit_bill_after_all": Route(EVERYONE, {"pk": "finished"}, does={"post": Action.KEEP_MONEY}),
    "api_visit_late_work": Route(
        EVERYONE, {"pk": "finished"}, does={"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}
    ),
    "api_farm_draft_month": Route(EVERYONE, {"pk": "farm"}, does={"post": Action.KEEP_MONEY}),
}
PAYMENTS_API: dict[str, Route] = {
    "api_payments": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}),
    "api_payment": Route(EVERYONE, {"pk": "payment"}, does={"get": Action.SEE_MONEY}),
    "api_payment_set_against": Route(EVERYONE, {"pk": "payment"}, does={"post": Action.KEEP_MONEY}),
    "api_payment_take_back": Route(EVERYONE, {"pk": "payment"}, does={"post": Action.KEEP_MONEY}),
    "api_payment_pay_back": Route(EVERYONE, {"pk": "payment"}, does={"post": Action.KEEP_MONEY}),
    "api_allocation_undo": Route(EVERYONE, {"pk": "allocation"}, does={"post": Action.KEEP_MONEY}),
    "api_owed": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_farm_account": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_MONEY}),
    "api_farm_statement": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_MONEY}),
    "api_farm_send_statement": Route(EVERYONE, {"pk": "farm"}, does={"post": Action.KEEP_MONEY}),
    "api_reminders": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_reminders_propose": Route(EVERYONE, does={"post": Action.KEEP_MONEY}),
    "api_reminder": Route(EVERYONE, {"pk": "reminder"}, does={"get": Action.SEE_MONEY}),
    "api_reminder_pdf": Route(EVERYONE, {"pk": "reminder"}, does={"get": Action.SEE_MONEY}),
    "api_reminder_approve": Route(EVERYONE, {"pk": "reminder"}, does={"post": Action.KEEP_MONEY}),
    "api_reminder_drop": Route(EVERYONE, {"pk": "reminder"}, does={"post": Action.KEEP_MONEY}),
}
BANK_API: dict[str, Route] = {
    "api_bank_files": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.KEEP_BANK}),
    "api_bank_file_whole": Route(EVERYONE, does={"post": Action.KEEP_BANK}),
    "api_bank_file": Route(EVERYONE, {"pk": "bank_file"}, does={"get": Action.SEE_MONEY}),
    "api_bank_file_columns": Route(EVERYONE, {"pk": "bank_file"}, does={"get": Action.SEE_MONEY}),
    "api_bank_file_read": Route(EVERYONE, {"pk": "bank_file"}, does={"post": Action.KEEP_BANK}),
    "api_bank_mappings": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_bank_entries": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_bank_accept": Route(EVERYONE, does={"post": Action.KEEP_BANK}),
    "api_bank_entry": Route(EVERYONE, {"pk": "bank_entry"}, does={"get": Action.SEE_MONEY}),
    "api_bank_entry_match": Route(EVERYONE, {"pk": "bank_entry"}, does={"post": Action.KEEP_BANK}),
    "api_bank_entry_paid_back": Route(EVERYONE, {"pk": "bank_entry"}, does={"post": Action.KEEP_BANK}),
    "api_bank_entry_set_aside": Route(EVERYONE, {"pk": "bank_entry"}, does={"post": Action.KEEP_BANK}),
    "api_bank_entry_bring_back": Route(EVERYONE, {"pk": "bank_entry"}, does={"post": Action.KEEP_BANK}),
    "api_bank_proposals": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
}
PRICES_API: dict[str, Route] = {
    "api_price_lists": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.KEEP_PRICES}),
    "api_price_list": Route(
        EVERYONE,
        {"pk": "price_list"},
        does={"get": Action.SEE_MONEY, "patch": Action.KEEP_PRICES, "delete": Action.KEEP_PRICES},
    ),
    "api_tax_rates": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.KEEP_PRICES}),
    "api_tax_rate": Route(
        EVERYONE,
        {"pk": "tax_rate"},
        does={"get": Action.SEE_MONEY, "patch": Action.KEEP_PRICES, "delete": Action.KEEP_PRICES},
    ),
    "api_tax_suggestions": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_farm_agreements": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_MONEY, "post": Action.KEEP_PRICES}
    ),
    "api_agreement": Route(EVERYONE, {"pk": "agreement"}, does={"get": Action.SEE_MONEY}),
    "api_agreement_end": Route(EVERYONE, {"pk": "agreement"}, does={"post": Action.KEEP_PRICES}),
    "api_farm_terms": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_MONEY, "patch": Action.KEEP_MONEY}
    ),
    "api_money_rules": Route(EVERYONE, does={"get": Action.SEE_MONEY, "patch": Action.KEEP_MONEY}),
    "api_money_logo": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}),
    "api_reference_rates": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}),
    "api_reference_rate": Route(EVERYONE, {"pk": "reference_rate"}, does={"get": Action.SEE_MONEY}),
    "api_mileage_rates": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}),
    "api_mileage_rate": Route(EVERYONE, {"pk": "mileage_rate"}, does={"get": Action.SEE_MONEY}),
}
BOOKS_API: dict[str, Route] = {
    "api_books": Route(EVERYONE, does={"get": Action.SEE_MONEY}),
    "api_books_xlsx": Route(EVERYONE, does={"get": Action.TAKE_BOOKS}),
    "api_book": Route(EVERYONE, fixed={"part": "sales-journal"}, does={"get": Action.SEE_MONEY}),
    "api_book_csv": Route(EVERYONE, fixed={"part": "sales-journal"}, does={"get": Action.TAKE_BOOKS}),
    "api_book_xlsx": Route(EVERYONE, fixed={"part": "sales-journal"}, does={"get": Action.TAKE_BOOKS}),
    "api_journeys": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.KEEP_MONEY}),
    "api_journeys_take_in": Route(EVERYONE, does={"post": Action.KEEP_MONEY}),
    "api_journey": Route(
        EVERYONE, {"pk": "journey"}, does={"get": Action.SEE_MONEY, "patch": Action.KEEP_MONEY}
    ),
    "api_period_lock": Route(EVERYONE, does={"get": Action.SEE_MONEY, "post": Action.LOCK_BOOKS}),
}

MONEY_API = {**INVOICES_API, **DRAFTS_API, **PAYMENTS_API, **BANK_API, **PRICES_API, **BOOKS_API}
