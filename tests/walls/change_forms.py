"""Every form of a row that is there: on which page it stands, which field two people change, and what each types."""

from dataclasses import dataclass, field


@dataclass(frozen=True)
class Change:
    """On the page `route` one person types `theirs` into `name`, another `mine`; `more` is typed by both."""

    name: str
    theirs: object
    mine: object
    more: dict[str, object] = field(default_factory=dict)


WHY = {"reason": "They asked for it"}
CHANGES: dict[str, Change] = {
    "business": Change("phone", "01632 960001", "01632 960002"),
    "part": Change("role", "trimmer", "owner"),
    "own_ways": Change("phone", "+44 1632 960001", "+44 1632 960002"),
    "retention": Change("photos_months", "70", "71"),
    "farm_edit": Change("access_notes", "By the church", "By the mill"),
    "milking": Change("minutes", "161", "162"),
    "farm_client": Change("rights", ["reads_reports"], ["asks_visits"]),
    "contact": Change("part", "Herd", "Accounts"),
    "payer": Change("address", "1 Low Street", "2 Low Street"),
    "cow_edit": Change("note", "Kicks", "Is calm"),
    "van": Change("base_name", "The old yard", "The new yard"),
    "figures": Change("planning-circuity", "1.4", "1.5"),
    "messages": Change("late_minutes", "21", "22"),
    "message": Change("subject", "We come on {day} then", "We come on {day} for sure"),
    "watch": Change("grace_minutes", "41", "42"),
    "watch_contact": Change("email", "theirs@home.example", "mine@home.example"),
    "draft_rules": Change("trim_again_after", "131", "132"),
    "kit_item_edit": Change("note", "On the top shelf", "On the low shelf"),
    "blade_edit": Change("note", "Was nicked", "Is new"),
    "price_list": Change("minimum", "31", "32"),
    "tax_rate": Change("name", "The full rate", "The usual rate"),
    "farm_terms": Change("addresses", "theirs@farm.example", "mine@farm.example"),
    "money_rules": Change("sums", "1000: 70", "1000: 80"),
    "invoice_line": Change("description", "Their words", "My words", WHY),
    "invoice_head": Change("note", "Their note", "My note", WHY),
    "journey": Change("distance", "41", "42", {"because": "The odometer says so"}),
}

ADDS = "puts a row there, and changes none"
LOOKS = "says what is to be shown; writes nothing"
STEP = "a step that the service refuses where it does not fit what is there now"
LOG = "adds a line to a ledger or a log, beside what others put there"
OWN = "one's own sign-in, which nobody else changes"
BASE = "what other forms are made of"
LIBRARY = "a library's"
NO_ROW_SEEN = {
    **dict.fromkeys(("FarmGuestForm", "GuestForm", "HerdListForm", "BankFileForm", "JourneyForm"), ADDS),
    **dict.fromkeys(("AgreementForm", "TokenForm", "PhoneForm", "CalendarForm", "OutsideCalendarForm"), ADDS),
    **dict.fromkeys(("WebhookForm", "VetPassForm", "DayOffForm", "VisitWishForm", "PlaceForm"), ADDS),
    **dict.fromkeys(("LameCowsForm", "RoutineForm", "PaymentForm", "HandLineForm", "CreditForm"), ADDS),
    **dict.fromkeys(("MileageRateForm", "ReferenceRateForm", "ScoresForm", "SendForm", "WholeForm"), ADDS),
    **dict.fromkeys(("FindForm", "FindCowForm", "NarrowForm", "PeriodForm", "DrivesPeriodForm"), LOOKS),
    **dict.fromkeys(("WhenForm", "LanguageForm", "BevelForm", "TubForm", "ComeInForm"), LOOKS),
    **dict.fromkeys(("WishForm",), "of the changes: shows; of a farm: what other wishes are made of"),
    **dict.fromkeys(("PlanVisitForm", "ReasonForm", "StartForm", "FinishForm", "HoldForm", "TakeForm"), STEP),
    **dict.fromkeys(("ChangedForm", "LateForm", "OutForm", "IllForm", "CalledOffForm", "LameForm"), STEP),
    **dict.fromkeys(("DraftActForm", "RuleSetForm", "BladeStateForm", "CallOffForm", "ArrivedForm"), STEP),
    **dict.fromkeys(("IssueAllForm", "DropForm", "WhyForm", "EraseForm", "ErasureForm"), STEP),
    **dict.fromkeys(("ErasePersonForm", "PaidBackForm", "SharesForm", "AmountForm"), STEP),
    **dict.fromkeys(("SupplierForm", "LoadForm"), "knows by itself what its reader saw (`seen`)"),
    **dict.fromkeys(("BoughtForm", "MovedForm", "CountForm", "WrittenOffForm", "SharpenedForm"), LOG),
    **dict.fromkeys(("LockForm", "WeatherForm", "ReadInForm", "WayForm"), LOG),
    **dict.fromkeys(("ChangePassword", "PasswordForm"), OWN),
    **dict.fromkeys(("DiscountForm", "RightsForm", "StockForm", "TakenForm", "AmountsForm"), BASE),
    "MappingForm": "how one file is read; kept under a name it takes the place of that name alone",
}
"""Forms of ours that say nothing of a row as it was, by their names, and why."""
