"""Every address of the program, who may open it, and which rows it names. A new address needs its line here."""

from collections.abc import Iterator

from django.urls import URLPattern, URLResolver, get_resolver

from tests.walls.kit_routes import KIT
from tests.walls.message_routes import MESSAGE_LINKS, MESSAGES
from tests.walls.outgoing_routes import OUTGOING
from tests.walls.outside_routes import OUTSIDE
from tests.walls.route import Route
from tests.walls.stuck_routes import STUCK
from tests.walls.watch_routes import WATCH
from trimops.accounts.roles import EVERYONE, STAFF, Role

OWNER = frozenset({Role.OWNER})
MONEY = frozenset({Role.OWNER, Role.OFFICE})
CRUSH = frozenset({Role.OWNER, Role.TRIMMER})
CLIENT = frozenset({Role.FARM})

# The sign-in pages are those of a library, and the look page is there only while developing.
NOT_OURS = ("account/", "look/", "static/")


# Behind sign-in. 302 leads on to another page; 405 is a button: it is pressed, not looked at.
PAGES = {
    "home": Route(EVERYONE, answer=302),
    "people": Route(OWNER),
    "business": Route(OWNER),
    "membership_end": Route(OWNER, {"pk": "membership"}),
    "farm_list": Route(STAFF),
    "farm_new": Route(STAFF),
    "farm": Route(STAFF, {"pk": "farm"}),
    "farm_edit": Route(STAFF, {"pk": "farm"}),
    "milking": Route(STAFF, {"pk": "farm"}),
    "farm_clients": Route(MONEY, {"pk": "farm"}),
    "farm_client": Route(MONEY, {"farm_pk": "farm", "pk": "access"}),
    "contacts": Route(STAFF, {"pk": "farm"}),
    "payers": Route(MONEY),
    "payer": Route(MONEY, {"pk": "payer"}),
    "cow_new": Route(STAFF, {"farm_pk": "farm"}),
    "cow_edit": Route(STAFF, {"farm_pk": "farm", "pk": "cow"}),
    "herd_list": Route(STAFF, {"pk": "farm"}),
    "herd_preview": Route(STAFF, {"farm_pk": "farm", "pk": "herd_import"}),
    "by_itself": Route(STAFF),
    "this_week": Route(STAFF),
    "plan_week": Route(CRUSH, fixed={"week": "2026-03-02"}, answer=405),
    "week_plan": Route(STAFF, {"pk": "week_plan"}, answer=302),
    "week_plan_state": Route(STAFF, {"pk": "week_plan"}),
    "week_plan_accept": Route(CRUSH, {"pk": "week_plan"}, answer=405),
    "week_plan_enough": Route(CRUSH, {"pk": "week_plan"}, answer=405),
    "week_plan_prove": Route(CRUSH, {"pk": "week_plan"}, answer=405),
    "week_plan_bring_back": Route(CRUSH, {"pk": "week_plan"}, answer=405),
    "week_stop": Route(CRUSH, {"pk": "week_plan", "visit_pk": "planned"}),
    "week_stop_places": Route(CRUSH, {"pk": "week_plan", "visit_pk": "planned"}),
    "week_stop_move": Route(CRUSH, {"pk": "week_plan", "visit_pk": "planned"}, answer=405),
    "week_stop_lock": Route(CRUSH, {"pk": "week_plan", "visit_pk": "planned"}, answer=405),
    "day_sheet": Route(STAFF, {"pk": "week_plan", "shift": "plan_shift"}),
    "week_changed": Route(CRUSH, fixed={"week": "2026-03-02"}),
    "week_changed_what": Route(CRUSH, fixed={"week": "2026-03-02", "what": "out"}),
    "replan": Route(STAFF, {"pk": "replan"}),
    "replan_state": Route(STAFF, {"pk": "replan"}),
    "replan_accept": Route(CRUSH, {"pk": "replan"}, answer=405),
    "replan_drop": Route(CRUSH, {"pk": "replan"}, answer=405),
    "replan_told": Route(STAFF, {"pk": "replan", "visit_pk": "planned"}, answer=405),
    "plan_against": Route(STAFF, {"pk": "week_plan", "other": "replan"}),
    "visit_list": Route(STAFF),
    "visit_ask": Route(STAFF, {"farm_pk": "farm"}),
    "farm_when": Route(STAFF, {"farm_pk": "farm"}),
    "offer_hold": Route(STAFF, {"farm_pk": "farm"}, answer=405),
    "held_hour": Route(STAFF, {"pk": "held"}),
    "held_take": Route(STAFF, {"pk": "held"}, answer=405),
    "held_let_go": Route(STAFF, {"pk": "held"}, answer=405),
    "visit": Route(STAFF, {"pk": "planned"}),
    "visit_plan": Route(STAFF, {"pk": "planned"}),
    "visit_confirm": Route(STAFF, {"pk": "planned"}),
    "visit_told": Route(STAFF, {"pk": "planned"}),
    "visit_put_off": Route(STAFF, {"pk": "planned"}),
    "visit_call_off": Route(STAFF, {"pk": "planned"}),
    "visit_start": Route(CRUSH, {"pk": "planned"}),
    "visit_finish": Route(CRUSH, {"pk": "under_way"}),
    "crush": Route(CRUSH, {"pk": "under_way"}),
    "crush_days": Route(CRUSH),
    "crush_today": Route(CRUSH),
    "crush_papers": Route(CRUSH, {"pk": "under_way"}),
    "trim_photo": Route(EVERYONE, {"pk": "finished", "uid": "photo"}),
    "visit_report": Route(EVERYONE, {"pk": "finished"}),
    "visit_report_version": Route(EVERYONE, {"pk": "finished"}, fixed={"version": 1}),
    "visit_report_page": Route(STAFF, {"pk": "finished"}),
    "visit_report_issue": Route(STAFF, {"pk": "finished"}, answer=405),
    "referral_letter": Route(EVERYONE, {"pk": "finished", "trim_pk": "trim"}),
    "referral_issue": Route(STAFF, {"pk": "finished", "trim_pk": "trim"}, answer=405),
    "draft_list": Route(EVERYONE, {"pk": "planned"}),
    "draft": Route(STAFF, {"pk": "planned"}),
    "draft_rules": Route(STAFF, {"farm_pk": "farm"}),
    "mobility": Route(STAFF, {"farm_pk": "farm"}),
    "herd_figures": Route(STAFF, {"farm_pk": "farm"}),
    "herd_year": Route(EVERYONE, {"farm_pk": "farm"}, fixed={"year": "2026"}),
    "cow": Route(STAFF, {"pk": "cow"}),
    "vans": Route(STAFF),
    "van_new": Route(CRUSH),
    "van": Route(CRUSH, {"pk": "van"}),
    "day_off": Route(CRUSH, {"pk": "van"}, answer=405),
    "van_back": Route(CRUSH, {"pk": "van_out"}, answer=405),
    "figures": Route(CRUSH),
    "calendar": Route(STAFF),
    "calendar_revoke": Route(STAFF, {"pk": "calendar_address"}, answer=405),
    "invoice_list": Route(MONEY),
    "invoice": Route(MONEY, {"pk": "invoice"}),
    "invoice_paper": Route(MONEY, {"pk": "invoice"}),
    "prices": Route(MONEY),
    "price_list_new": Route(MONEY),
    "price_list": Route(MONEY, {"pk": "price_list"}),
    "price_list_drop": Route(MONEY, {"pk": "price_list"}, answer=405),
    "tax_rates": Route(MONEY),
    "tax_rate": Route(MONEY, {"pk": "tax_rate"}),
    "tax_rate_drop": Route(MONEY, {"pk": "tax_rate"}, answer=405),
    "agreements": Route(MONEY, {"pk": "farm"}),
    "agreement_end": Route(MONEY, {"pk": "agreement"}, answer=405),
    "farm_terms": Route(MONEY, {"pk": "farm"}),
    "money_rules": Route(MONEY),
    "money_logo": Route(MONEY),
    "invoice_send": Route(MONEY, {"pk": "issued"}),
    "invoice_links": Route(MONEY, {"pk": "issued"}),
    "invoice_link_close": Route(MONEY, {"pk": "invoice_link"}, answer=405),
    "sendings": Route(MONEY),
    "sending": Route(MONEY, {"pk": "sending"}, answer=302),
    "sent_paper": Route(MONEY, {"pk": "money_mail"}, answer=302),
    "invoice_draft": Route(MONEY, {"visit_pk": "finished"}, answer=405),
    "bill_ready": Route(MONEY),
    "bill_leave": Route(MONEY, {"visit_pk": "finished"}),
    "bill_after_all": Route(MONEY, {"visit_pk": "finished"}, answer=405),
    "bill_late": Route(MONEY, {"visit_pk": "finished"}),
    "visit_bill": Route(MONEY, {"visit_pk": "finished"}, answer=302),
    "invoice_drafts": Route(MONEY),
    "invoice_issue_all": Route(MONEY),
    "invoice_issued": Route(MONEY),
    "invoice_line_new": Route(MONEY, {"pk": "invoice"}),
    "invoice_line": Route(MONEY, {"pk": "invoice_line"}),
    "invoice_whole": Route(MONEY, {"pk": "invoice"}),
    "invoice_whole_drop": Route(MONEY, {"pk": "invoice_whole"}, answer=405),
    "invoice_head": Route(MONEY, {"pk": "invoice"}),
    "invoice_undo": Route(MONEY, {"pk": "invoice"}),
    "invoice_credit": Route(MONEY, {"pk": "issued"}),
    "reminders": Route(MONEY),
    "reminders_approve": Route(MONEY, answer=405),
    "reminder": Route(MONEY, {"pk": "reminder"}),
    "reminder_paper": Route(MONEY, {"pk": "reminder"}),
    "reference_rates": Route(MONEY),
    "books": Route(MONEY),
    "books_file": Route(MONEY),
    "book_part": Route(MONEY, fixed={"part": "sales-journal"}),
    "book_csv": Route(MONEY, fixed={"part": "sales-journal"}),
    "book_xlsx": Route(MONEY, fixed={"part": "sales-journal"}),
    "mileage": Route(MONEY),
    "journey_new": Route(MONEY),
    "journey": Route(MONEY, {"pk": "journey"}),
    "mileage_rates": Route(MONEY),
    "period_lock": Route(MONEY),
    "money_overdue": Route(MONEY),
    "farm_account": Route(MONEY, {"farm_pk": "farm"}),
    "farm_statement": Route(MONEY, {"farm_pk": "farm"}),
    "payments": Route(MONEY),
    "payment_new": Route(MONEY),
    "payment": Route(MONEY, {"pk": "payment"}),
    "payment_take_back": Route(MONEY, {"pk": "payment"}),
    "payment_pay_back": Route(MONEY, {"pk": "payment"}),
    "invoice_settled": Route(MONEY, {"pk": "issued"}),
    "invoice_set_off": Route(MONEY, {"pk": "issued", "bill_pk": "issued"}, answer=405),
    "settled_undo": Route(MONEY, {"pk": "allocation"}),
    "bank": Route(MONEY),
    "bank_accept": Route(MONEY, answer=405),
    "bank_done": Route(MONEY),
    "bank_read": Route(MONEY, {"pk": "bank_file"}),
    "bank_entry": Route(MONEY, {"pk": "bank_entry"}),
    "bank_aside": Route(MONEY, {"pk": "bank_entry"}, answer=405),
    "bank_paid_back": Route(MONEY, {"pk": "bank_entry"}, answer=405),
    "portal_home": Route(CLIENT),
    "portal_farms": Route(CLIENT),
    "portal_ask": Route(CLIENT),
    "portal_offers": Route(CLIENT, answer=302),
    "portal_hold": Route(CLIENT, answer=405),
    "portal_wish": Route(CLIENT, answer=405),
    "portal_held": Route(CLIENT, {"pk": "held"}),
    "portal_take": Route(CLIENT, {"pk": "held"}, answer=405),
    "portal_let_go": Route(CLIENT, {"pk": "held"}, answer=405),
    "portal_draft": Route(CLIENT, {"pk": "planned"}),
    "portal_scores": Route(CLIENT),
    "portal_reports": Route(CLIENT),
    "portal_report": Route(CLIENT, {"pk": "finished"}),
    "portal_cows": Route(CLIENT),
    "portal_cow": Route(CLIENT, {"pk": "cow"}),
    "portal_herd": Route(CLIENT),
    "portal_money": Route(CLIENT),
    "portal_invoice_paper": Route(CLIENT, {"pk": "issued"}),
    "portal_invoice_xml": Route(CLIENT, {"pk": "issued"}, fixed={"form": "cii"}),
    "portal_calendar": Route(CLIENT),
    "portal_calendar_close": Route(CLIENT, {"pk": "farm_calendar"}, answer=405),
    "portal_data": Route(CLIENT),
    "portal_data_csv": Route(CLIENT),
    "portal_data_xlsx": Route(CLIENT),
    "portal_data_ade": Route(CLIENT),
    "portal_data_all": Route(CLIENT, answer=405),
    "portal_erase": Route(CLIENT),
    "portal_erase_back": Route(CLIENT, {"pk": "erasure"}, answer=405),
    "portal_vet": Route(CLIENT),
    "portal_vet_close": Route(CLIENT, {"pk": "vet_pass"}, answer=405),
    "vet_passes": Route(STAFF, {"pk": "farm"}),
    "vet_pass_close": Route(STAFF, {"pk": "vet_pass"}, answer=405),
    "farm_data": Route(MONEY, {"pk": "farm"}),
    "farm_data_all": Route(MONEY, {"pk": "farm"}, answer=405),
    "farm_erase": Route(OWNER, {"pk": "farm"}),
    **KIT,
    **WATCH,
    **MESSAGES,
    **OUTGOING,
    **STUCK,
    **OUTSIDE,
}
# The JSON side: refused in problem details instead of being led to sign in.
API = {
    "crush_writings": Route(CRUSH, {"pk": "under_way"}, answer=405),
    "crush_photo": Route(CRUSH, {"pk": "under_way", "uid": "photo"}, answer=405),
    "visit_heard": Route(CRUSH, {"pk": "under_way"}, answer=405),
}
# The address itself is the proof: whoever holds the link may open it.
VETS_LINK = {"vet_desk", "vet_report", "vet_letter", "vet_cow", "vet_photo", "vet_herd"}
BILLS_LINK = {"invoice_by_link", "invoice_by_link_pdf", "invoice_by_link_xml"}
BY_LINK = (
    {"invitation", "calendar_feed", "come_in_by_link", "watch_by_link"}
    | VETS_LINK
    | BILLS_LINK
    | MESSAGE_LINKS
)
# Open to all: it lets nobody in, it sends a link to an address that is known.
DOOR = {"come_in"}
# Open to all, because there is nothing in it but our own files.
PUBLIC = {"crush_worker", "crush_pack", "crush_manifest"}


def every_pattern() -> Iterator[URLPattern]:
    """Each of our own addresses."""
    yield from _patterns(get_resolver(), "")


def _patterns(resolver: URLResolver, before: str) -> Iterator[URLPattern]:
    for entry in resolver.url_patterns:
        address = before + str(entry.pattern)
        if address.lstrip("^").startswith(NOT_OURS):
            continue
        if isinstance(entry, URLResolver):
            yield from _patterns(entry, address)
        else:
            yield entry
