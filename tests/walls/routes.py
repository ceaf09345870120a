"""Every address of the program, who may open it, and which rows it names. A new address needs its line here."""

from collections.abc import Iterator
from uuid import uuid4

from django.urls import URLPattern, URLResolver, get_resolver

from tests.walls.audit_routes import CHANGES, CHANGES_API
from tests.walls.farms_api_routes import FARMS_API
from tests.walls.identity_routes import IDENTITY
from tests.walls.kit_api_routes import KIT_API
from tests.walls.kit_routes import KIT
from tests.walls.message_routes import MESSAGE_LINKS, MESSAGES
from tests.walls.money_api_routes import MONEY_API
from tests.walls.outgoing_routes import OUTGOING
from tests.walls.outside_routes import OUTSIDE
from tests.walls.protection_routes import PROTECTION
from tests.walls.route import Route
from tests.walls.stuck_routes import STUCK
from tests.walls.visits_api_routes import WORK_API
from tests.walls.watch_routes import WATCH
from trimops.accounts.actions import Action
from trimops.accounts.roles import EVERYONE, STAFF, FarmRight, Role

OWNER = frozenset({Role.OWNER})
MONEY = frozenset({Role.OWNER, Role.OFFICE})
CRUSH = frozenset({Role.OWNER, Role.TRIMMER})
CLIENT = frozenset({Role.FARM})

# The sign-in pages are those of a library, and the look page is there only while developing.
NOT_OURS = ("account/", "look/", "static/")


# Behind sign-in. 302 leads on to another page; 405 is a button: it is pressed, not looked at.
PAGES = {
    "home": Route(EVERYONE, answer=302, only="get"),
    "people": Route(OWNER),
    "business": Route(OWNER),
    "membership_end": Route(OWNER, {"pk": "membership"}),
    "farm_list": Route(STAFF, only="get"),
    "farm_new": Route(STAFF),
    "farm": Route(STAFF, {"pk": "farm"}, only="get"),
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
    "by_itself": Route(STAFF, only="get"),
    "this_week": Route(STAFF, only="get"),
    "plan_week": Route(CRUSH, fixed={"week": "2026-03-02"}, answer=405),
    "week_plan": Route(STAFF, {"pk": "week_plan"}, answer=302, only="get"),
    "week_plan_state": Route(STAFF, {"pk": "week_plan"}, only="get"),
    "week_plan_accept": Route(CRUSH, {"pk": "week_plan"}, answer=405),
    "week_plan_enough": Route(CRUSH, {"pk": "week_plan"}, answer=405),
    "week_plan_prove": Route(CRUSH, {"pk": "week_plan"}, answer=405),
    "week_plan_bring_back": Route(CRUSH, {"pk": "week_plan"}, answer=405),
    "week_stop": Route(CRUSH, {"pk": "week_plan", "visit_pk": "planned"}, only="get"),
    "week_stop_places": Route(CRUSH, {"pk": "week_plan", "visit_pk": "planned"}, only="get"),
    "week_stop_move": Route(CRUSH, {"pk": "week_plan", "visit_pk": "planned"}, answer=405),
    "week_stop_lock": Route(CRUSH, {"pk": "week_plan", "visit_pk": "planned"}, answer=405),
    "day_sheet": Route(STAFF, {"pk": "week_plan", "shift": "plan_shift"}, only="get"),
    "week_changed": Route(CRUSH, fixed={"week": "2026-03-02"}, only="get"),
    "week_changed_what": Route(CRUSH, fixed={"week": "2026-03-02", "what": "out"}),
    "replan": Route(STAFF, {"pk": "replan"}, only="get"),
    "replan_state": Route(STAFF, {"pk": "replan"}, only="get"),
    "replan_accept": Route(CRUSH, {"pk": "replan"}, answer=405),
    "replan_drop": Route(CRUSH, {"pk": "replan"}, answer=405),
    "replan_told": Route(STAFF, {"pk": "replan", "visit_pk": "planned"}, answer=405),
    "plan_against": Route(STAFF, {"pk": "week_plan", "other": "replan"}, only="get"),
    "visit_list": Route(STAFF, only="get"),
    "visit_ask": Route(STAFF, {"farm_pk": "farm"}),
    "farm_when": Route(STAFF, {"farm_pk": "farm"}, only="get"),
    "offer_hold": Route(STAFF, {"farm_pk": "farm"}, answer=405),
    "held_hour": Route(STAFF, {"pk": "held"}, only="get"),
    "held_take": Route(STAFF, {"pk": "held"}, answer=405),
    "held_let_go": Route(STAFF, {"pk": "held"}, answer=405),
    "visit": Route(STAFF, {"pk": "planned"}, only="get"),
    "visit_plan": Route(STAFF, {"pk": "planned"}),
    "visit_confirm": Route(STAFF, {"pk": "planned"}),
    "visit_told": Route(STAFF, {"pk": "planned"}),
    "visit_put_off": Route(STAFF, {"pk": "planned"}),
    "visit_call_off": Route(STAFF, {"pk": "planned"}),
    "visit_start": Route(CRUSH, {"pk": "planned"}),
    "visit_finish": Route(CRUSH, {"pk": "under_way"}),
    "crush": Route(CRUSH, {"pk": "under_way"}, only="get"),
    "crush_days": Route(CRUSH, only="get"),
    "crush_today": Route(CRUSH, only="get"),
    "crush_papers": Route(CRUSH, {"pk": "under_way"}, only="get"),
    "trim_photo": Route(EVERYONE, {"pk": "finished", "uid": "photo"}, only="get"),
    "visit_report": Route(EVERYONE, {"pk": "finished"}, right=FarmRight.READS_REPORTS, only="get"),
    "visit_report_version": Route(
        EVERYONE, {"pk": "finished"}, fixed={"version": 1}, right=FarmRight.READS_REPORTS, only="get"
    ),
    "visit_report_page": Route(STAFF, {"pk": "finished"}, only="get"),
    "visit_report_issue": Route(STAFF, {"pk": "finished"}, answer=405),
    "referral_letter": Route(
        EVERYONE, {"pk": "finished", "trim_pk": "trim"}, right=FarmRight.READS_REPORTS, only="get"
    ),
    "referral_issue": Route(STAFF, {"pk": "finished", "trim_pk": "trim"}, answer=405),
    "draft_list": Route(EVERYONE, {"pk": "planned"}, only="get"),
    "draft": Route(STAFF, {"pk": "planned"}),
    "draft_rules": Route(STAFF, {"farm_pk": "farm"}),
    "mobility": Route(STAFF, {"farm_pk": "farm"}),
    "herd_figures": Route(STAFF, {"farm_pk": "farm"}, only="get"),
    "herd_year": Route(
        EVERYONE, {"farm_pk": "farm"}, fixed={"year": "2026"}, right=FarmRight.READS_REPORTS, only="get"
    ),
    "cow": Route(STAFF, {"pk": "cow"}, only="get"),
    "vans": Route(STAFF, only="get"),
    "van_new": Route(CRUSH),
    "van": Route(CRUSH, {"pk": "van"}),
    "day_off": Route(CRUSH, {"pk": "van"}, answer=405),
    "van_back": Route(CRUSH, {"pk": "van_out"}, answer=405),
    "figures": Route(CRUSH),
    "calendar": Route(STAFF),
    "calendar_revoke": Route(STAFF, {"pk": "calendar_address"}, answer=405),
    "invoice_list": Route(MONEY, only="get"),
    "invoice": Route(MONEY, {"pk": "invoice"}),
    "invoice_paper": Route(MONEY, {"pk": "invoice"}, only="get"),
    "prices": Route(MONEY, only="get"),
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
    "money_logo": Route(MONEY, only="get"),
    "invoice_send": Route(MONEY, {"pk": "issued"}),
    "invoice_links": Route(MONEY, {"pk": "issued"}),
    "invoice_link_close": Route(MONEY, {"pk": "invoice_link"}, answer=405),
    "sendings": Route(MONEY, only="get"),
    "sending": Route(MONEY, {"pk": "sending"}, answer=302, only="get"),
    "sent_paper": Route(MONEY, {"pk": "money_mail"}, answer=302, only="get"),
    "invoice_draft": Route(MONEY, {"visit_pk": "finished"}, answer=405),
    "bill_ready": Route(MONEY),
    "bill_leave": Route(MONEY, {"visit_pk": "finished"}),
    "bill_after_all": Route(MONEY, {"visit_pk": "finished"}, answer=405),
    "bill_late": Route(MONEY, {"visit_pk": "finished"}),
    "visit_bill": Route(MONEY, {"visit_pk": "finished"}, answer=302, only="get"),
    "invoice_drafts": Route(MONEY, only="get"),
    "invoice_issue_all": Route(MONEY),
    "invoice_issued": Route(MONEY, only="get"),
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
    "reminder_paper": Route(MONEY, {"pk": "reminder"}, only="get"),
    "reference_rates": Route(MONEY),
    "books": Route(MONEY, only="get"),
    "books_file": Route(MONEY, only="get"),
    "book_part": Route(MONEY, fixed={"part": "sales-journal"}, only="get"),
    "book_csv": Route(MONEY, fixed={"part": "sales-journal"}, only="get"),
    "book_xlsx": Route(MONEY, fixed={"part": "sales-journal"}, only="get"),
    "mileage": Route(MONEY),
    "journey_new": Route(MONEY),
    "journey": Route(MONEY, {"pk": "journey"}),
    "mileage_rates": Route(MONEY),
    "period_lock": Route(MONEY, to_post=OWNER),
    "money_overdue": Route(MONEY, only="get"),
    "farm_account": Route(MONEY, {"farm_pk": "farm"}),
    "farm_statement": Route(MONEY, {"farm_pk": "farm"}, only="get"),
    "payments": Route(MONEY, only="get"),
    "payment_new": Route(MONEY),
    "payment": Route(MONEY, {"pk": "payment"}),
    "payment_take_back": Route(MONEY, {"pk": "payment"}),
    "payment_pay_back": Route(MONEY, {"pk": "payment"}),
    "invoice_settled": Route(MONEY, {"pk": "issued"}),
    "invoice_set_off": Route(MONEY, {"pk": "issued", "bill_pk": "issued"}, answer=405),
    "settled_undo": Route(MONEY, {"pk": "allocation"}),
    "bank": Route(MONEY),
    "bank_accept": Route(MONEY, answer=405),
    "bank_done": Route(MONEY, only="get"),
    "bank_read": Route(MONEY, {"pk": "bank_file"}),
    "bank_entry": Route(MONEY, {"pk": "bank_entry"}),
    "bank_aside": Route(MONEY, {"pk": "bank_entry"}, answer=405),
    "bank_paid_back": Route(MONEY, {"pk": "bank_entry"}, answer=405),
    "portal_home": Route(CLIENT, only="get"),
    "portal_farms": Route(CLIENT),
    "portal_ask": Route(CLIENT, right=FarmRight.ASKS_VISITS, only="get"),
    "portal_offers": Route(CLIENT, answer=302, right=FarmRight.ASKS_VISITS, only="get"),
    "portal_hold": Route(CLIENT, answer=405, right=FarmRight.ASKS_VISITS),
    "portal_wish": Route(CLIENT, answer=405, right=FarmRight.ASKS_VISITS),
    "portal_held": Route(CLIENT, {"pk": "held"}, right=FarmRight.ASKS_VISITS, only="get"),
    "portal_take": Route(CLIENT, {"pk": "held"}, answer=405, right=FarmRight.ASKS_VISITS),
    "portal_let_go": Route(CLIENT, {"pk": "held"}, answer=405, right=FarmRight.ASKS_VISITS),
    "portal_draft": Route(CLIENT, {"pk": "planned"}, right_to_post=FarmRight.EDITS_DRAFT),
    "portal_scores": Route(CLIENT, right=FarmRight.EDITS_DRAFT),
    "portal_reports": Route(CLIENT, right=FarmRight.READS_REPORTS, only="get"),
    "portal_report": Route(CLIENT, {"pk": "finished"}, right=FarmRight.READS_REPORTS, only="get"),
    "portal_cows": Route(CLIENT, only="get"),
    "portal_cow": Route(CLIENT, {"pk": "cow"}, only="get"),
    "portal_herd": Route(CLIENT, right=FarmRight.READS_REPORTS, only="get"),
    "portal_money": Route(CLIENT, right=FarmRight.SEES_MONEY, only="get"),
    "portal_invoice_paper": Route(CLIENT, {"pk": "issued"}, right=FarmRight.SEES_MONEY, only="get"),
    "portal_invoice_xml": Route(
        CLIENT, {"pk": "issued"}, fixed={"form": "cii"}, right=FarmRight.SEES_MONEY, only="get"
    ),
    "portal_calendar": Route(CLIENT),
    "portal_calendar_close": Route(CLIENT, {"pk": "farm_calendar"}, answer=405),
    "portal_data": Route(CLIENT, right=FarmRight.HANDS_OVER, only="get"),
    "portal_data_csv": Route(CLIENT, right=FarmRight.HANDS_OVER, only="get"),
    "portal_data_xlsx": Route(CLIENT, right=FarmRight.HANDS_OVER, only="get"),
    "portal_data_ade": Route(CLIENT, right=FarmRight.HANDS_OVER, only="get"),
    "portal_data_all": Route(CLIENT, answer=405, right=FarmRight.HANDS_OVER),
    "portal_erase": Route(CLIENT, right=FarmRight.HANDS_OVER),
    "portal_erase_back": Route(CLIENT, {"pk": "erasure"}, answer=405, right=FarmRight.HANDS_OVER),
    "portal_vet": Route(CLIENT, right=FarmRight.HANDS_OVER),
    "portal_vet_close": Route(CLIENT, {"pk": "vet_pass"}, answer=405, right=FarmRight.HANDS_OVER),
    "vet_passes": Route(STAFF, {"pk": "farm"}),
    "vet_pass_close": Route(STAFF, {"pk": "vet_pass"}, answer=405),
    "farm_data": Route(MONEY, {"pk": "farm"}, only="get"),
    "farm_data_all": Route(MONEY, {"pk": "farm"}, answer=405),
    "farm_erase": Route(OWNER, {"pk": "farm"}),
    **KIT,
    **WATCH,
    **MESSAGES,
    **OUTGOING,
    **STUCK,
    **CHANGES,
    **PROTECTION,
    **OUTSIDE,
    **IDENTITY,
}
# A phone makes the name of a photo itself.
PHOTO = uuid4()
# The JSON side: refused in problem details instead of being led to sign in.
API = {
    "crush_writings": Route(CRUSH, {"pk": "under_way"}, does={"post": Action.WORK_AT_CRUSH}),
    "crush_photo": Route(CRUSH, {"pk": "under_way"}, {"uid": PHOTO}, does={"put": Action.WORK_AT_CRUSH}),
    "visit_heard": Route(CRUSH, {"pk": "under_way"}, does={"post": Action.WORK_AT_CRUSH}),
    **CHANGES_API,
    **FARMS_API,
    **KIT_API,
    **WORK_API,
    **MONEY_API,
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
PUBLIC = {"crush_worker", "crush_pack", "crush_manifest", "api_description", "api_problems"}


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
