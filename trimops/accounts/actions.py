"""Who may do what: one table of actions and roles, asked at one place (`Seat.allows`).

Each page and each address of the API names the action that it is. DEVELOPERS.md shows the table; tests/walls tries it.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from trimops.accounts.roles import AT_THE_CRUSH, EVERYONE, STAFF, FarmRight, Role

OWNER = frozenset({Role.OWNER})
DESK = frozenset({Role.OWNER, Role.OFFICE})
FARM = frozenset({Role.FARM})


class Action(StrEnum):
    """What can be done, as a token's scope names it: what it is done to, and seen or kept."""

    COME_IN = "home:open"
    SEE_FARMS = "farms:see"
    SEE_EVERY_FARM = "farms:see-all"
    KEEP_FARMS = "farms:keep"
    HAND_OVER_FARMS = "farms:hand-over"
    ERASE_FARMS = "farms:erase"
    KEEP_PAYERS = "payers:keep"
    LET_IN_CLIENTS = "clients:keep"
    LET_IN_VETS = "vets:let-in"
    KEEP_VET_PASSES = "vet-passes:keep"
    SEE_COWS = "cows:see"
    KEEP_COWS = "cows:keep"
    SEE_VISITS = "visits:see"
    SEE_DIARY = "diary:see"
    KEEP_VISITS = "visits:keep"
    ASK_VISITS = "visits:ask"
    KEEP_CALENDARS = "calendars:keep"
    GIVE_CALENDARS = "calendars:give"
    PLAN_WEEKS = "weeks:plan"
    SEE_WEEKS = "weeks:see"
    KEEP_FIGURES = "figures:keep"
    WORK_AT_CRUSH = "crush:work"
    KEEP_WATCH = "watch:keep"
    SEE_WORK = "work:see"
    KEEP_WORK = "work:keep"
    KEEP_DRAFT = "draft:keep"
    KEEP_VANS = "vans:keep"
    SEE_VANS = "vans:see"
    SEE_KIT = "kit:see"
    KEEP_KIT = "kit:keep"
    COUNT_KIT = "kit:count"
    SEE_KNIVES = "knives:see"
    KEEP_KNIVES = "knives:keep"
    SEE_MONEY = "money:see"
    SEE_OWN_BILLS = "bills:see"
    KEEP_MONEY = "money:keep"
    KEEP_PRICES = "prices:keep"
    KEEP_BANK = "bank:keep"
    TAKE_BOOKS = "books:take"
    LOCK_BOOKS = "books:lock"
    TAKE_DATA_OUT = "data:take"
    KEEP_MESSAGES = "messages:keep"
    KEEP_OUTGOING = "outgoing:keep"
    SEE_BY_ITSELF = "by-itself:see"
    MEND_STUCK = "stuck:mend"
    SEE_CHANGES = "changes:see"
    SEE_MONEY_CHANGES = "changes:money"
    SEE_ALL_CHANGES = "changes:all"
    KEEP_WEBHOOKS = "webhooks:keep"
    KEEP_BUSINESS = "business:keep"
    KEEP_PEOPLE = "people:keep"
    HAND_OVER_PEOPLE = "people:hand-over"
    KEEP_RETENTION = "retention:keep"
    TAKE_OWN_DATA = "own-data:take"
    KEEP_OWN_WAYS = "own-ways:keep"
    KEEP_OWN_PROGRAMS = "own-programs:keep"
    KEEP_PROGRAMS = "programs:keep"
    SEE_OWN_FARM = "own-farm:see"
    ASK_FOR_OWN_FARM = "own-farm:ask"
    KEEP_OWN_DRAFT = "own-farm:draft"
    READ_OWN_REPORTS = "own-farm:reports"
    READ_OWN_MONEY = "own-farm:money"
    GIVE_OWN_DATA = "own-farm:data"


@dataclass(frozen=True)
class Allowed:
    """The roles that may, the right that a farm client needs besides, and in a few words what it is."""

    roles: frozenset[Role]
    right: FarmRight | None = None
    says: str = ""


MAY: dict[Action, Allowed] = {
    Action.COME_IN: Allowed(EVERYONE, says="come in, and be led to the page of the day"),
    Action.SEE_FARMS: Allowed(EVERYONE, says="farms and their milkings; a farm client their own"),
    Action.SEE_EVERY_FARM: Allowed(STAFF, says="every farm and cow on the pages of staff"),
    Action.KEEP_FARMS: Allowed(STAFF, says="farms, milkings and contacts"),
    Action.HAND_OVER_FARMS: Allowed(DESK, says="a farm's data, given to it"),
    Action.ERASE_FARMS: Allowed(OWNER, says="a farm, erased"),
    Action.KEEP_PAYERS: Allowed(DESK, says="who pays for farms"),
    Action.LET_IN_CLIENTS: Allowed(DESK, says="people of a farm, and their rights"),
    Action.LET_IN_VETS: Allowed(STAFF, says="the vet's link, given and closed for a farm"),
    Action.KEEP_VET_PASSES: Allowed(
        EVERYONE, FarmRight.HANDS_OVER, "links for a farm's vet: seen, given and closed by other programs"
    ),
    Action.SEE_COWS: Allowed(EVERYONE, says="cows and photos of their feet; a farm client their own"),
    Action.KEEP_COWS: Allowed(STAFF, says="cows, herd lists, mobility scores"),
    Action.SEE_VISITS: Allowed(
        EVERYONE, says="visits and the paper of a draft list; a farm client their own"
    ),
    Action.SEE_DIARY: Allowed(STAFF, says="the diary on the pages of staff"),
    Action.KEEP_VISITS: Allowed(
        STAFF, says="visits asked for, planned, agreed, put off, called off; offers of hours"
    ),
    Action.ASK_VISITS: Allowed(EVERYONE, FarmRight.ASKS_VISITS, "ask for a visit, take an hour"),
    Action.GIVE_CALENDARS: Allowed(
        EVERYONE, says="calendar addresses over the API; a farm client for their own farm"
    ),
    Action.KEEP_CALENDARS: Allowed(STAFF, says="calendar addresses, made and closed"),
    Action.PLAN_WEEKS: Allowed(AT_THE_CRUSH, says="week plans: asked for, changed, accepted"),
    Action.SEE_WEEKS: Allowed(STAFF, says="week plans and day sheets"),
    Action.KEEP_FIGURES: Allowed(AT_THE_CRUSH, says="the business's own figures"),
    Action.WORK_AT_CRUSH: Allowed(AT_THE_CRUSH, says="the crush page; a visit begun and finished"),
    Action.KEEP_WATCH: Allowed(AT_THE_CRUSH, says="the watch over who works alone"),
    Action.SEE_WORK: Allowed(EVERYONE, FarmRight.READS_REPORTS, "reports, letters, herd figures"),
    Action.KEEP_WORK: Allowed(STAFF, says="reports and letters, looked at and issued"),
    Action.KEEP_DRAFT: Allowed(EVERYONE, FarmRight.EDITS_DRAFT, "cows struck from a draft list or put on it"),
    Action.SEE_VANS: Allowed(STAFF, says="vans"),
    Action.KEEP_VANS: Allowed(AT_THE_CRUSH, says="vans, their days off, calendars that keep them in"),
    Action.SEE_KIT: Allowed(STAFF, says="stock, orders, tonight's list"),
    Action.KEEP_KIT: Allowed(STAFF, says="stock bought, moved, ordered, loaded"),
    Action.COUNT_KIT: Allowed(AT_THE_CRUSH, says="stock counted; the weather a van stands in"),
    Action.SEE_KNIVES: Allowed(STAFF, says="knives, blades and discs"),
    Action.KEEP_KNIVES: Allowed(AT_THE_CRUSH, says="knives, blades and discs, changed and sharpened"),
    Action.SEE_MONEY: Allowed(DESK, says="invoices, payments, accounts"),
    Action.SEE_OWN_BILLS: Allowed(
        DESK | FARM, FarmRight.SEES_MONEY, "issued invoices; a farm client their own"
    ),
    Action.KEEP_MONEY: Allowed(DESK, says="drafts, invoices, credit notes, payments, reminders, miles"),
    Action.KEEP_PRICES: Allowed(DESK, says="prices, tax rates, what was agreed with a farm"),
    Action.KEEP_BANK: Allowed(DESK, says="statements of the bank, read and matched"),
    Action.TAKE_BOOKS: Allowed(DESK, says="the books, taken out"),
    Action.LOCK_BOOKS: Allowed(OWNER, says="the books, locked and opened"),
    Action.TAKE_DATA_OUT: Allowed(DESK | FARM, FarmRight.HANDS_OVER, "a farm's data, taken out"),
    Action.KEEP_MESSAGES: Allowed(DESK, says="what farms are told, and when"),
    Action.KEEP_OUTGOING: Allowed(STAFF, says="what leaves the house: seen, tried again, left"),
    Action.SEE_BY_ITSELF: Allowed(STAFF, says="what the program does by itself"),
    Action.MEND_STUCK: Allowed(OWNER, says="what got stuck, started again"),
    Action.SEE_CHANGES: Allowed(STAFF, says="who changed what of farms, cows, visits and vans"),
    Action.SEE_MONEY_CHANGES: Allowed(DESK, says="who changed what of invoices, payments and prices"),
    Action.SEE_ALL_CHANGES: Allowed(OWNER, says="who changed anything; people and settings, too"),
    Action.KEEP_WEBHOOKS: Allowed(OWNER, says="addresses of other programs that are told things"),
    Action.KEEP_BUSINESS: Allowed(OWNER, says="the business's name, address and zone"),
    Action.KEEP_PEOPLE: Allowed(OWNER, says="people of the business"),
    Action.HAND_OVER_PEOPLE: Allowed(OWNER, says="what is kept of a person: given to them, erased"),
    Action.KEEP_RETENTION: Allowed(OWNER, says="how long things are kept"),
    Action.TAKE_OWN_DATA: Allowed(EVERYONE, says="what is kept of oneself, taken out"),
    Action.KEEP_OWN_WAYS: Allowed(STAFF, says="how one wants to be told things"),
    Action.KEEP_OWN_PROGRAMS: Allowed(EVERYONE, says="tokens of one's own programs, made and revoked"),
    Action.KEEP_PROGRAMS: Allowed(OWNER, says="everybody's tokens, seen and revoked"),
    Action.SEE_OWN_FARM: Allowed(FARM, says="the farm's own pages: its visits, cows, calendar"),
    Action.ASK_FOR_OWN_FARM: Allowed(FARM, FarmRight.ASKS_VISITS, "the farm's own page to ask for a visit"),
    Action.KEEP_OWN_DRAFT: Allowed(FARM, FarmRight.EDITS_DRAFT, "the farm's own draft list and scores"),
    Action.READ_OWN_REPORTS: Allowed(FARM, FarmRight.READS_REPORTS, "the farm's own reports and figures"),
    Action.READ_OWN_MONEY: Allowed(FARM, FarmRight.SEES_MONEY, "the farm's own invoices"),
    Action.GIVE_OWN_DATA: Allowed(
        FARM, FarmRight.HANDS_OVER, "the farm's own data: taken out, erased, shown the vet"
    ),
}

Does = Action | Mapping[str, Action] | None


def action_of(does: Does, method: str) -> Action | None:
    """What asking by that method does: a method that is not named does what looking does. None: closed to all."""
    if does is None or isinstance(does, Action):
        return does
    return does.get(method.lower(), does.get("get"))
