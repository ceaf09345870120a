"""Which rows the trail keeps, and which not with the reason. A test fails for a model that stands in neither.

`under` and `beside` are the columns of the rows that one hangs on, so that its changes show on their pages: the first
that is filled counts. `masked`: of these only that they changed is kept (secrets, their hashes, pictures). `unread`:
large bytes that never change. `quiet`: a change of these alone leaves no entry.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Kept:
    under: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()
    masked: frozenset[str] = frozenset()
    unread: frozenset[str] = frozenset()
    quiet: frozenset[str] = frozenset()
    business: str = "business_id"

    @property
    def always(self) -> tuple[str, ...]:
        """The columns that are wanted of every row."""
        return (self.business, *self.under, *self.beside)


def _kept(under: str = "", beside: str = "", *, masked: str = "", unread: str = "", quiet: str = "") -> Kept:
    return Kept(
        tuple(under.split()),
        tuple(beside.split()),
        frozenset(masked.split()),
        frozenset(unread.split()),
        frozenset(quiet.split()),
    )


PEOPLE = {
    "accounts.business": Kept(business="id"),
    "accounts.membership": _kept(),
    "accounts.apitoken": Kept(
        ("membership_id",),
        masked=frozenset({"digest", "token_key"}),
        quiet=frozenset({"last_used_at", "last_used_from"}),
        business="membership_id",
    ),
    "farms.farmaccess": _kept("membership_id", "farm_id"),
    "farms.vetpass": _kept("farm_id", masked="secret_hash", quiet="opened_at"),
    "visits.calendaraddress": _kept("farm_id van_id", masked="secret_hash"),
    "invoicing.invoicelink": _kept("invoice_id", masked="secret_hash", quiet="opened_at"),
    "outbox.webhookaddress": _kept(masked="secret"),
}
FARMS = {
    "farms.payer": _kept(),
    "farms.farm": _kept(quiet="shown_since place_sequence"),
    "farms.hygienechange": _kept("farm_id"),
    "farms.contact": _kept("farm_id"),
    "farms.cow": _kept("farm_id"),
    "farms.cowidentity": _kept("cow_id"),
    "farms.calving": _kept("cow_id"),
    "farms.erasure": _kept("farm_id"),
    "farms.herdimport": _kept("farm_id", unread="content"),
    "farms.milking": _kept("farm_id"),
}
WORK = {
    "visits.visit": _kept("farm_id", quiet="changed_at calendar_sequence versions_dropped_at"),
    "visits.askedcow": _kept("visit_id", "cow_id"),
    "visits.crushwriting": _kept("visit_id", "cow_id"),
    "visits.addedcow": _kept("cow_id"),
    "visits.trim": _kept("visit_id", "cow_id"),
    "visits.trimmedfoot": _kept("trim_id"),
    "visits.finding": _kept("trimmed_foot_id"),
    "visits.clawaction": _kept("trimmed_foot_id"),
    "visits.referral": _kept("trim_id"),
    "visits.trimphoto": _kept("visit_id", "trim_id", unread="picture"),
    "visits.washdown": _kept("visit_id"),
    "visits.block": _kept("put_on_by_id", "cow_id"),
    "visits.recheck": _kept("farm_id", "cow_id"),
    "visits.mobilityscoring": _kept("farm_id"),
    "visits.mobilityscore": _kept("scoring_id", "cow_id"),
    "visits.draftchoice": _kept("farm_id"),
    "visits.draftchange": _kept("visit_id", "cow_id"),
    "visits.issuedreport": _kept("visit_id", masked="content", unread="pdf"),
    "visits.referralletter": _kept("trim_id", masked="content", unread="pdf"),
    "visits.planlock": _kept("visit_id"),
}
VANS_AND_RULES = {
    "visits.van": _kept(quiet="shown_since"),
    "visits.shiftpattern": _kept("van_id"),
    "visits.dayoff": _kept("van_id"),
    "visits.vanout": _kept("van_id", quiet="calendar_sequence"),
    "visits.businessfigures": _kept(),
    "visits.watchrules": _kept(),
    "visits.watchcontact": _kept("van_id"),
    "visits.messagetext": _kept(),
    "visits.messagerules": _kept(),
    "portal.retentionrules": _kept(),
    # The trail cannot be read without its cuts, so what stands in one is proven by an entry.
    "audit.auditcut": _kept(),
    "visits.outsidecalendar": _kept(
        "van_id",
        masked="url",
        quiet="etag last_modified asked_at fetched_at read_at read_until left_out last_words",
    ),
}
MONEY = {
    "invoicing.invoice": _kept("farm_id", "visit_id"),
    "invoicing.invoiceline": _kept("invoice_id"),
    "invoicing.documentamount": _kept("invoice_id"),
    "invoicing.invoicepapers": _kept(unread="pdf cii ubl"),
    "invoicing.billedwork": _kept("invoice_id", "visit_id"),
    "invoicing.payment": _kept("farm_id", "bank_entry_id"),
    "invoicing.allocation": _kept("invoice_id", "payment_id"),
    "invoicing.reminder": _kept("invoice_id", unread="pdf"),
    "invoicing.bankfile": _kept(unread="content"),
    "invoicing.bankstatement": _kept(),
    # What the bank said of a payer stays in the row, which nobody can edit; a second copy would outlive an erased farm.
    "invoicing.bankentry": _kept("statement_id", masked="party_name party_account reference text"),
    "invoicing.bankmapping": _kept(),
    "invoicing.pricelist": _kept(),
    "invoicing.price": _kept("price_list_id"),
    "invoicing.travelband": _kept("price_list_id"),
    "invoicing.agreement": _kept("farm_id"),
    "invoicing.taxrate": _kept(),
    "invoicing.referencerate": _kept(),
    "invoicing.moneyrules": _kept(masked="logo"),
    "invoicing.farmterms": _kept("farm_id"),
    "invoicing.periodlock": _kept(),
    "invoicing.mileagerate": _kept(),
    "invoicing.journey": _kept("visit_id", "van_id"),
}
AUDITED: dict[str, Kept] = {**PEOPLE, **FARMS, **WORK, **VANS_AND_RULES, **MONEY}

_LIBRARY = "a library's own; nothing of a business stands in it"
_LOG = "is a log itself, written once and never changed; the row it tells of is kept"
_KIT = "a thing of the kit, whose ledger is only added to and says who and when"
_RECKONED = "reckoned by the program from rows that are kept"
_POST = "is on its way out; what was sent stands at /outgoing/"
NOT_AUDITED: dict[str, str] = {
    "audit.auditentry": "is the trail",
    "audit.auditseal": "is the trail",
    "accounts.user": "belongs to no one business; their part in each is kept (membership)",
    "accounts.user_groups": _LIBRARY,
    "accounts.user_user_permissions": _LIBRARY,
    "errands.errand": "a job of the program; what it does is kept",
    "outbox.outgoing": _POST,
    "outbox.outgoingpart": _POST,
    "outbox.outgoingevent": _LOG,
    "api.repeatablecall": "an answer kept for a week, so that a repeat gets the same",
    "visits.visitevent": _LOG,
    "visits.bladeevent": _LOG,
    "visits.watchevent": _LOG,
    "visits.visitmessage": _POST,
    "visits.invitation": _POST,
    "invoicing.sending": _POST,
    "invoicing.draftedit": _LOG,
    "invoicing.latework": _RECKONED,
    "invoicing.numberseries": "a counter; the numbers stand on the papers, which are kept",
    "visits.heldhour": "an hour held for some minutes; the visit that comes of it is kept",
    "visits.heldcow": "goes with an hour held",
    "visits.learnedlengths": _RECKONED,
    "visits.roadleg": "what a road map said",
    "visits.roadtrouble": "what a road map said",
    "visits.weekplan": "a proposal; the visits that it moves are kept",
    "visits.outsidebusy": "what an outside calendar says, read anew again and again",
    "visits.lonewatch": "has a log of its own (watchevent)",
    "visits.watchcall": "has a log of its own (watchevent)",
    "visits.blade": _KIT,
    "visits.sharpening": _KIT,
    "visits.bladeturn": _KIT,
    "visits.bladesaid": _KIT,
    "visits.consumable": _KIT,
    "visits.userule": _KIT,
    "visits.stockplace": _KIT,
    "visits.stocklot": _KIT,
    "visits.stockcount": _KIT,
    "visits.stockmovement": _KIT,
    "visits.supplyorder": _KIT,
    "visits.supplyline": _KIT,
    "visits.typedweather": "typed weather of a day; only the frost warning rests on it",
}
NOT_AUDITED_APPS: dict[str, str] = dict.fromkeys(
    ("account", "auth", "contenttypes", "sessions", "mfa", "usersessions", "knox"), _LIBRARY
)
