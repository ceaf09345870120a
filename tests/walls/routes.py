"""Every address of the program, who may open it, and which rows it names. A new address needs its line here."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from django.urls import URLPattern, URLResolver, get_resolver

from trimops.accounts.roles import EVERYONE, STAFF, Role

OWNER = frozenset({Role.OWNER})
MONEY = frozenset({Role.OWNER, Role.OFFICE})
CRUSH = frozenset({Role.OWNER, Role.TRIMMER})
CLIENT = frozenset({Role.FARM})

# The sign-in pages are those of a library, and the look page is there only while developing.
NOT_OURS = ("account/", "look/", "static/")


@dataclass(frozen=True)
class Route:
    """Who may open it; the row that each part of the address names; fixed parts; what the owner of the rows gets."""

    roles: frozenset[Role]
    rows: dict[str, str] = field(default_factory=dict)
    fixed: dict[str, str] = field(default_factory=dict)
    answer: int = 200

    def parts(self, *keyrings: dict[str, object]) -> dict[str, object]:
        """The parts of the address, one keyring for each named row (the last for all that follow)."""
        rings = [*keyrings, *[keyrings[-1]] * len(self.rows)]
        named = {part: ring[row] for (part, row), ring in zip(self.rows.items(), rings, strict=False)}
        return {**self.fixed, **named}


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
    "contacts": Route(STAFF, {"pk": "farm"}),
    "payers": Route(MONEY),
    "payer": Route(MONEY, {"pk": "payer"}),
    "cow_new": Route(STAFF, {"farm_pk": "farm"}),
    "cow_edit": Route(STAFF, {"farm_pk": "farm", "pk": "cow"}),
    "herd_list": Route(STAFF, {"pk": "farm"}),
    "herd_preview": Route(STAFF, {"farm_pk": "farm", "pk": "herd_import"}),
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
    "draft_list": Route(EVERYONE, {"pk": "planned"}),
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
    "invoice_draft": Route(MONEY, {"visit_pk": "finished"}, answer=405),
    "portal_home": Route(CLIENT),
    "portal_ask": Route(CLIENT),
}
# The JSON side: refused in problem details instead of being led to sign in.
API = {
    "crush_writings": Route(CRUSH, {"pk": "under_way"}, answer=405),
    "crush_photo": Route(CRUSH, {"pk": "under_way", "uid": "photo"}, answer=405),
}
# The address itself is the proof: whoever holds the link may open it.
BY_LINK = {"invitation", "calendar_feed"}
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
