"""What changes are shown on whose page, and who may see which kinds of rows."""

from collections.abc import Callable
from dataclasses import dataclass

from trimops.accounts.actions import Action
from trimops.audit.audited import FARMS, MONEY, PEOPLE, VANS_AND_RULES, WORK

AT_WORK = frozenset({*FARMS, *WORK, *VANS_AND_RULES})
"""Kinds of rows that all staff may see the changes of."""
OF_MONEY = frozenset(MONEY) | {"farms.payer", "invoicing.invoicelink"}
_NOT_FOR_STAFF = frozenset({"farms.payer", "visits.businessfigures", "portal.retentionrules"})


@dataclass(frozen=True)
class Subject:
    """A thing with a page: its kind of row, those that hang on it and are shown with it.

    `route` is its own page, `title` a word for it.
    """

    word: str
    title: str
    label: str
    parts: frozenset[str]
    route: str

    def shown_to(self, kinds: frozenset[str] | None) -> frozenset[str]:
        """The parts of it that somebody sees who may see `kinds` (None: all)."""
        return self.parts if kinds is None else self.parts & kinds


def _parts(app: str, names: str) -> frozenset[str]:
    return frozenset(f"{app}.{name}" for name in names.split())


_FEET = _parts("visits", "trimmedfoot finding clawaction referral trimphoto referralletter block")
_AT_FARM = _parts("farms", "hygienechange contact milking farmaccess vetpass herdimport erasure")
_AT_COW = _parts("farms", "cowidentity calving") | _parts(
    "visits", "trim recheck mobilityscore askedcow draftchange"
)
_AT_VISIT = _parts("visits", "askedcow trim washdown draftchange issuedreport planlock")
_AT_VAN = _parts("visits", "shiftpattern dayoff vanout calendaraddress outsidecalendar watchcontact")
_AT_INVOICE = _parts("invoicing", "invoiceline documentamount billedwork allocation reminder invoicelink")

SUBJECTS: dict[str, Subject] = {
    subject.word: subject
    for subject in (
        Subject("visit", "visit", "visits.visit", _AT_VISIT | _FEET, "visit"),
        Subject("cow", "cow", "farms.cow", _AT_COW | _FEET, "cow"),
        Subject(
            "farm",
            "farm",
            "farms.farm",
            _AT_FARM
            | _parts("visits", "draftchoice mobilityscoring")
            | _parts("invoicing", "agreement farmterms"),
            "farm",
        ),
        Subject("van", "van", "visits.van", _AT_VAN, "van"),
        Subject("invoice", "invoice", "invoicing.invoice", _AT_INVOICE, "invoice"),
        Subject(
            "payment",
            "payment",
            "invoicing.payment",
            _parts("invoicing", "allocation"),
            "payment",
        ),
        Subject(
            "price_list",
            "price list",
            "invoicing.pricelist",
            _parts("invoicing", "price travelband"),
            "price_list",
        ),
        Subject(
            "member",
            "person",
            "accounts.membership",
            _parts("farms", "farmaccess") | _parts("accounts", "apitoken"),
            "people",
        ),
    )
}


def kinds_for(allows: Callable[[Action], bool]) -> frozenset[str] | None:
    """The kinds of rows whose changes somebody may see who `allows` says it for; None: all."""
    if allows(Action.SEE_ALL_CHANGES):
        return None
    money = OF_MONEY if allows(Action.SEE_MONEY_CHANGES) else frozenset()
    people = frozenset(PEOPLE) & _AT_FARM | _parts("visits", "calendaraddress")
    return (AT_WORK - _NOT_FOR_STAFF) | people | money
