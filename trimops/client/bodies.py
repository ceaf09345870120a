# Made of trimops/api/openapi.json by tests/trimops/client/making.py (`make client`); change that, not this.

from __future__ import annotations

from typing import Any, Literal, NotRequired, TypeAlias, TypedDict

AccountWhat: TypeAlias = Literal[
    "invoice", "credit_note", "payment", "paid_back", "from_other", "to_other", "write_off"
]


ActionKind: TypeAlias = Literal[
    "length", "balance", "model", "relief", "loose_horn", "block", "block_off", "wrap", "dressing", "no_cut"
]


class AgesShown(TypedDict):
    not_yet_due: str
    to_30: str
    to_60: str
    to_90: str
    over_90: str


AgreementKind: TypeAlias = Literal["percent", "price"]


class AmountLineRequest(TypedDict):
    consumable: int
    quantity: str
    lot: NotRequired[int | None]


class AnewTold(TypedDict):
    invoice: int | None


class ArrivedWordRequest(TypedDict):
    line: int
    quantity: str
    cost: NotRequired[str | None]
    lot_code: NotRequired[str]
    expires_on: NotRequired[str | None]
    closes: NotRequired[bool]


class AskedCowShown(TypedDict):
    cow: int
    why: str
    mobility_scale: str
    mobility_score: int | None
    lame_since: str | None


class BandWord(TypedDict):
    up_to: str | None
    price: str


class BandWordRequest(TypedDict):
    up_to: str | None
    price: str


class BankEntryShown(TypedDict):
    id: int
    file: int
    booked_on: str
    currency: str
    amount: str
    charges: str
    party_name: str
    party_account: str
    reference: str
    text: str
    is_reversal: bool
    set_aside_at: str | None
    set_aside_because: str


class BankFileShown(TypedDict):
    id: int
    file_name: str
    sha256: str
    kept_at: str
    read_at: str | None


class BecauseWordRequest(TypedDict):
    because: str


class BevelLineTold(TypedDict):
    angle: float
    width: float
    times: float


class BevelTold(TypedDict):
    thickness: float
    angle: float
    width: float
    lines: list[BevelLineTold]


class BillWriteOffWordRequest(TypedDict):
    amount: NotRequired[str]
    reason: str


BillingRhythm: TypeAlias = Literal["visit", "month"]


BladeFault: TypeAlias = Literal["cracked", "chipped", "bent", "handle", "worn", "lost"]


BladeKind: TypeAlias = Literal["hoof_knife", "double_edged", "loop_knife", "grinder_disc", "other"]


BladeState: TypeAlias = Literal["bought", "in_use", "at_grinding", "out_of_use", "retired"]


BlockKind: TypeAlias = Literal["wood", "rubber", "eva", "shoe"]


BookDay: TypeAlias = Literal["issued", "tax_point"]


class BoughtLineRequest(TypedDict):
    consumable: int
    quantity: str
    cost: NotRequired[str | None]
    lot_code: NotRequired[str]
    expires_on: NotRequired[str | None]


class BusyShown(TypedDict):
    id: int
    starts: str
    ends: str
    is_all_day: bool
    summary: str


class CalendarMadeShown(TypedDict):
    id: int
    name: str
    van: int | None
    farm: int | None
    trimmer: int | None
    alarm_minutes: int | None
    shows_wishes: bool
    made_at: str
    revoked_at: str | None
    address: str | None


class CalendarShown(TypedDict):
    id: int
    name: str
    van: int | None
    farm: int | None
    trimmer: int | None
    alarm_minutes: int | None
    shows_wishes: bool
    made_at: str
    revoked_at: str | None


class CalendarWordRequest(TypedDict):
    name: str
    van: NotRequired[int | None]
    farm: NotRequired[int | None]
    trimmer: NotRequired[int | None]
    alarm_minutes: NotRequired[int | None]
    shows_wishes: NotRequired[bool]


CallAnswer: TypeAlias = Literal["well_on", "well_done", "takes", "found", "cannot"]


class CallOffOrderWordRequest(TypedDict):
    because: NotRequired[str]


CalledBy: TypeAlias = Literal["mail", "sms", "both"]


class CalvingLine(TypedDict):
    calved_on: str
    lactation: int | None


class CalvingWordRequest(TypedDict):
    calved_on: str
    lactation: NotRequired[int | None]


Change: TypeAlias = Literal["new_day", "new_van", "new_hour", "left_out", "put_in", "gone", "stays"]


class CheckLine(TypedDict):
    consumable: int
    name: str
    unit: str
    expected: str
    in_van: str
    in_store: str
    load: str
    missing: str
    past_date: str
    chance_short: float


class ClaimShown(TypedDict):
    open_amount: str
    interest: str
    fixed_sum: str
    problem: str


Claw: TypeAlias = Literal["lateral", "medial", "skin"]


class ColumnSum(TypedDict):
    currency: str
    column: str
    sum: str


ConsumableKind: TypeAlias = Literal[
    "block", "glue", "wrap", "dressing", "gloves", "disc", "disinfectant", "other"
]


class ContactShown(TypedDict):
    id: int
    farm: int
    name: str
    part: str
    phone: str
    email: str
    gets_reports: bool
    gets_invitations: bool
    told_by: Literal["", "mail", "sms"]
    language: Literal[
        "en", "cy", "ga", "gd", "nl", "de", "fr", "es", "it", "pt", "da", "sv", "nb", "pl", "ro", "lt"
    ]
    opted_out_at: str | None


class ContactWordRequest(TypedDict):
    name: str
    part: str
    phone: NotRequired[str]
    email: NotRequired[str]
    gets_reports: NotRequired[bool]
    gets_invitations: NotRequired[bool]
    told_by: NotRequired[Literal["", "mail", "sms"]]
    language: NotRequired[
        Literal[
            "en", "cy", "ga", "gd", "nl", "de", "fr", "es", "it", "pt", "da", "sv", "nb", "pl", "ro", "lt"
        ]
    ]


class CostPointShown(TypedDict):
    seconds: float
    cost: str


class CountWordRequest(TypedDict):
    count: int


class CountedLine(TypedDict):
    consumable: int
    counted: str
    had: str


class CowScoreWordRequest(TypedDict):
    cow: int
    score: int


CowStatus: TypeAlias = Literal["milking", "dry", "heifer", "bull", "sold", "dead"]


class CowWordRequest(TypedDict):
    number: str
    status: NotRequired[CowStatus]
    born_on: NotRequired[str | None]
    calved_on: NotRequired[str | None]
    calving_due: NotRequired[str | None]
    dry_off_due: NotRequired[str | None]
    left_on: NotRequired[str | None]
    note: NotRequired[str]
    official_tag: NotRequired[str]
    electronic_id: NotRequired[str]
    freeze_brand: NotRequired[str]
    collar: NotRequired[str]
    lactation: NotRequired[int | None]


class CreditLineWordRequest(TypedDict):
    line: int
    quantity: NotRequired[str | None]
    amount: NotRequired[str | None]


class CreditWordRequest(TypedDict):
    reason: str
    lines: NotRequired[list[CreditLineWordRequest]]
    work_may_be_billed_again: NotRequired[bool]


class Begun(TypedDict):
    at: str
    checked: NotRequired[bool | None]


class CrushBatchWordRequest(TypedDict):
    phone: str
    sent_at: str
    seen: NotRequired[int | None]
    begun: NotRequired[Begun | None]
    writings: NotRequired[list[Any] | None]


class CrushFaultShown(TypedDict):
    field: str
    reason: str


class CrushPapersShown(TypedDict):
    format: str
    fetched_at: str
    seat: dict[str, Any]
    visit: dict[str, Any]
    farm: dict[str, Any]
    cows: list[dict[str, Any]]
    queue: list[int]
    catalogue: dict[str, Any]
    scale: str
    figures: dict[str, Any]
    consumables: list[dict[str, Any]]
    is_watched: bool
    blades: list[dict[str, Any]]
    written: list[dict[str, Any]]
    cursor: int


CrushPlace: TypeAlias = Literal["brought", "on_site"]


DDStage: TypeAlias = Literal["M0", "M1", "M2", "M3", "M4", "M4.1"]


class DayOffShown(TypedDict):
    day: str
    reason: str


class DayOffWordRequest(TypedDict):
    day: str
    reason: NotRequired[str]
    is_off: NotRequired[bool]


class DaysWordRequest(TypedDict):
    first: str
    last: str


class DebtorShown(TypedDict):
    farm: int
    farm_name: str
    payer_name: str
    ages: AgesShown
    total: str
    overdue: str
    unused: str


DistanceUnit: TypeAlias = Literal["KMT", "SMI"]


class DraftCowWordRequest(TypedDict):
    cow: int
    why: NotRequired[str]


DraftKind: TypeAlias = Literal["struck", "added"]


class DraftLengthShown(TypedDict):
    cows: int
    minutes: int
    planned_minutes: int
    planned_for: int
    room: int | None
    over: int


class DraftRulesShown(TypedDict):
    score_counts: NotRequired[int]
    use_dry_off: NotRequired[bool]
    dry_off_from: NotRequired[int]
    dry_off_to: NotRequired[int]
    use_heifers: NotRequired[bool]
    heifer_from: NotRequired[int]
    heifer_to: NotRequired[int]
    use_milk_days: NotRequired[bool]
    milk_from: NotRequired[int]
    milk_to: NotRequired[int]
    use_long_ago: NotRequired[bool]
    trim_again_after: NotRequired[int]
    calving_warning: NotRequired[int]


class DraftRulesShownRequest(TypedDict):
    score_counts: NotRequired[int]
    use_dry_off: NotRequired[bool]
    dry_off_from: NotRequired[int]
    dry_off_to: NotRequired[int]
    use_heifers: NotRequired[bool]
    heifer_from: NotRequired[int]
    heifer_to: NotRequired[int]
    use_milk_days: NotRequired[bool]
    milk_from: NotRequired[int]
    milk_to: NotRequired[int]
    use_long_ago: NotRequired[bool]
    trim_again_after: NotRequired[int]
    calving_warning: NotRequired[int]


class DraftedTold(TypedDict):
    invoice: int | None


class DriveWordRequest(TypedDict):
    on: str
    from_words: str
    to_words: str
    purpose: str
    distance: str
    van: NotRequired[int | None]


class DueDays(TypedDict):
    what: str
    first: int
    last: int


EdgeBefore: TypeAlias = Literal["dull", "still_cut", "chipped", "not_said"]


EdgeFelt: TypeAlias = Literal["very_sharp", "sharp", "fair", "poor"]


class EdgeTold(TypedDict):
    blade: int
    may_cut: bool
    is_counted: bool
    cows: int
    sure: int
    low: int
    middle: int
    high: int
    is_dull: bool
    is_guess: bool


class EdgesTold(TypedDict):
    edges: list[EdgeTold]
    accepted: float


class EditShown(TypedDict):
    at: str
    by: int
    what: str
    reason: str


EntryKind: TypeAlias = Literal["added", "changed", "taken_away", "handed_out"]


class EntryRefused(TypedDict):
    entry: int
    why: str


class ErasureShown(TypedDict):
    id: int
    farm: int
    asked_at: str
    note: str
    withdrawn_at: str | None
    done_at: str | None


class ErasureWordRequest(TypedDict):
    note: NotRequired[str]


EveningJob: TypeAlias = Literal["load", "grind", "broken", "wash", "order", "warm", "count", "date"]


class EveningTaskTold(TypedDict):
    job: EveningJob
    name: str
    what: str
    why: str
    key: int
    number: int


class EveningTold(TypedDict):
    title: str
    tasks: list[EveningTaskTold]


FarmRight: TypeAlias = Literal["reads_reports", "edits_draft", "asks_visits", "sees_money", "hands_over"]


class FarmRulesShown(TypedDict):
    farm: int
    rule_set: Literal["round", "dry_off", "spaced", "pressing"]
    own: DraftRulesShown
    rules: DraftRulesShown
    changed_at: str | None


AgreedItem: TypeAlias = int


class FarmsAgreedWordRequest(TypedDict):
    agreed: NotRequired[list[AgreedItem]]


class FileWordRequest(TypedDict):
    file_name: str
    content: str


FindingKind: TypeAlias = Literal["better", "worse", "plain", "steady", "too_few", "picked"]


class FixedSum(TypedDict):
    debt: str
    sum: str


class FixedSumRequest(TypedDict):
    debt: str
    sum: str


Foot: TypeAlias = Literal["LF", "RF", "LH", "RH"]


class GonePiece(TypedDict):
    trim: int | None
    invoice: int
    words: str


Hand: TypeAlias = Literal["right", "left", "either"]


class HandLineWordRequest(TypedDict):
    description: str
    quantity: str
    unit_price: str
    tax_rate: int
    reason: str


class HappenedShown(TypedDict):
    plan: int | None


class HeardWordRequest(TypedDict):
    well: NotRequired[Literal["more", "done", ""]]
    ago: NotRequired[float]


HeldState: TypeAlias = Literal["held", "taken", "let_go", "expired"]


class HerdFindingShown(TypedDict):
    title: str
    sentence: str
    kind: FindingKind
    basis: str


class HerdListShown(TypedDict):
    id: int
    farm: int
    file_name: str
    uploaded_at: str
    applied_at: str | None
    outcome: dict[str, Any] | None


class HerdListWordRequest(TypedDict):
    file_name: str
    content: str


class HerdRowShown(TypedDict):
    what: str
    figure: str
    basis: str
    source: str


class HerdTableShown(TypedDict):
    title: str
    note: str
    rows: list[HerdRowShown]


class HourShown(TypedDict):
    start: str
    finish: str
    van: str


class HourWordRequest(TypedDict):
    van: int
    start: str


class IllSaidRequest(TypedDict):
    van: int
    first: str
    last: str


InvoiceKind: TypeAlias = Literal["invoice", "credit_note"]


InvoiceState: TypeAlias = Literal["draft", "issued"]


class InvoicesTold(TypedDict):
    invoices: list[int]


class JourneyShown(TypedDict):
    id: int
    on: str
    position: int
    van: int | None
    visit: int | None
    from_words: str
    to_words: str
    purpose: str
    distance: str
    unit: DistanceUnit
    is_by_hand: bool
    reckoned: str | None
    reckoned_source: str
    mended_because: str
    source: str
    noted_at: str


class KitListFault(TypedDict):
    line: int
    name: str
    faults: list[str]


class KitListTold(TypedDict):
    new: list[str]
    changed: list[str]
    refused: list[KitListFault]


class KitListWordRequest(TypedDict):
    lines: str


class LateSaidRequest(TypedDict):
    visit: int
    free: str
    meal_had: NotRequired[bool]


class LeftOffShown(TypedDict):
    visit: int
    trim: int | None
    words: str
    not_billed_because: str


class LeftOutShown(TypedDict):
    visit: int | None
    reason: str
    detail: str


LesionCode: TypeAlias = Literal[
    "AC",
    "CD",
    "CC",
    "SC",
    "DD",
    "ID",
    "IP",
    "HHE",
    "IH",
    "SW",
    "DS",
    "HF",
    "HFA",
    "HFH",
    "HFV",
    "SH",
    "SHD",
    "SHC",
    "U",
    "SU",
    "BU",
    "TU",
    "TN",
    "TS",
    "WL",
    "WLF",
    "WLA",
]


class LetterShown(TypedDict):
    id: int
    version: int
    sha256: str
    made_at: str
    changed: str
    trim: int


class LineLeft(TypedDict):
    line: int
    quantity: str
    net: str


class LinkShown(TypedDict):
    id: int
    invoice: int
    made_at: str
    expires_at: str
    closed_at: str | None
    opened_at: str | None


class ListedCow(TypedDict):
    line: int
    number: str
    official_tag: str
    electronic_id: str
    status: CowStatus | None
    hints: list[str]


class ListedFault(TypedDict):
    line: int
    number: str
    faults: list[str]


class ListedFieldChange(TypedDict):
    field: str
    before: str
    after: str


class LoadLineRequest(TypedDict):
    consumable: int
    quantity: str


class LoadTakenRequest(TypedDict):
    at: NotRequired[str]
    note: NotRequired[str]
    day: str
    seen: NotRequired[int | None]
    items: list[LoadLineRequest]
    is_really_there: NotRequired[bool]


LockOn: TypeAlias = Literal["day", "hour"]


class LockRow(TypedDict):
    locked_until: str | None
    at: str
    by: int
    why: str


class LockShown(TypedDict):
    id: int
    visit: int
    van: int
    day: str
    start: str | None
    at: str


class LockStopWordRequest(TypedDict):
    on: LockOn


class LockTold(TypedDict):
    locked_until: str | None
    history: list[LockRow]


class LockWordRequest(TypedDict):
    until: str | None
    why: str
    even_so: NotRequired[bool]


class LogoWord(TypedDict):
    picture: str | None


class LogoWordRequest(TypedDict):
    picture: str | None


class LotLine(TypedDict):
    place: int
    lot: int | None
    code: str
    expires_on: str | None
    quantity: str


class LotsTold(TypedDict):
    lots: list[LotLine]


class MailDraft(TypedDict):
    addresses: list[str]
    subject: str
    body: str
    with_xml: bool
    no_xml_because: str


Address: TypeAlias = str


class MailWordRequest(TypedDict):
    addresses: NotRequired[list[Address]]
    subject: NotRequired[str]
    body: NotRequired[str]
    with_xml: NotRequired[bool | None]
    with_link: NotRequired[bool]


TextItem: TypeAlias = int


class MappingWord(TypedDict):
    encoding: NotRequired[Literal["utf-8-sig", "cp1252", "utf-16"]]
    delimiter: NotRequired[Literal[";", ",", "\t", "|"]]
    decimal: NotRequired[Literal[",", "."]]
    day_format: NotRequired[
        Literal[
            "%Y-%m-%d",
            "%d/%m/%Y",
            "%d.%m.%Y",
            "%d-%m-%Y",
            "%m/%d/%Y",
            "%d/%m/%y",
            "%d.%m.%y",
            "%d %b %Y",
            "%Y%m%d",
        ]
    ]
    header_rows: NotRequired[int]
    footer_rows: NotRequired[int]
    day: int
    amount: NotRequired[int | None]
    credit: NotRequired[int | None]
    debit: NotRequired[int | None]
    mark: NotRequired[int | None]
    credit_word: NotRequired[str]
    debit_word: NotRequired[str]
    party: NotRequired[int | None]
    account: NotRequired[int | None]
    reference: NotRequired[int | None]
    bank_reference: NotRequired[int | None]
    text: NotRequired[list[TextItem]]


class MappingWordRequest(TypedDict):
    encoding: NotRequired[Literal["utf-8-sig", "cp1252", "utf-16"]]
    delimiter: NotRequired[Literal[";", ",", "\t", "|"]]
    decimal: NotRequired[Literal[",", "."]]
    day_format: NotRequired[
        Literal[
            "%Y-%m-%d",
            "%d/%m/%Y",
            "%d.%m.%Y",
            "%d-%m-%Y",
            "%m/%d/%Y",
            "%d/%m/%y",
            "%d.%m.%y",
            "%d %b %Y",
            "%Y%m%d",
        ]
    ]
    header_rows: NotRequired[int]
    footer_rows: NotRequired[int]
    day: int
    amount: NotRequired[int | None]
    credit: NotRequired[int | None]
    debit: NotRequired[int | None]
    mark: NotRequired[int | None]
    credit_word: NotRequired[str]
    debit_word: NotRequired[str]
    party: NotRequired[int | None]
    account: NotRequired[int | None]
    reference: NotRequired[int | None]
    bank_reference: NotRequired[int | None]
    text: NotRequired[list[TextItem]]


MessageKind: TypeAlias = Literal[
    "booked", "moved", "put_off", "called_off", "tomorrow", "on_the_way", "late", "report"
]


class MessageLookShown(TypedDict):
    visit: int | None
    subject: str
    body: str
    sms: str | None
    sms_parts: int | None
    foreign: str


class MessageTextShown(TypedDict):
    kind: MessageKind
    language: Literal[
        "en", "cy", "ga", "gd", "nl", "de", "fr", "es", "it", "pt", "da", "sv", "nb", "pl", "ro", "lt"
    ]
    subject: NotRequired[str]
    body: NotRequired[str]
    short: NotRequired[str]
    places: list[str]


class MessageTextWordRequest(TypedDict):
    kind: MessageKind
    language: Literal[
        "en", "cy", "ga", "gd", "nl", "de", "fr", "es", "it", "pt", "da", "sv", "nb", "pl", "ro", "lt"
    ]
    subject: NotRequired[str]
    body: NotRequired[str]
    short: NotRequired[str]


class MessageTextsShown(TypedDict):
    items: list[MessageTextShown]


class MileageRateShown(TypedDict):
    id: int
    valid_from: str
    unit: DistanceUnit
    first_rate: str
    up_to: int | None
    then_rate: str
    year_begins_month: int
    year_begins_day: int
    source: str


class MileageRateWordRequest(TypedDict):
    valid_from: str
    unit: DistanceUnit
    first_rate: str
    up_to: NotRequired[int | None]
    then_rate: NotRequired[str]
    year_begins_month: NotRequired[int]
    year_begins_day: NotRequired[int]
    source: str


class MilkingLine(TypedDict):
    weekday: int
    starts: str
    minutes: int


class MilkingLineRequest(TypedDict):
    weekday: int
    starts: str
    minutes: int


class MilkingsShown(TypedDict):
    milkings: list[MilkingLine]


MobilityScale: TypeAlias = Literal["UK0-3", "S1-5"]


class MonthWordRequest(TypedDict):
    month: str


class MoveWordRequest(TypedDict):
    shift: str | None
    position: NotRequired[int]


class MovedShown(TypedDict):
    visit: int
    farm: str
    van: int
    start: str
    to_van: int
    to_day: str | None
    to_start: str | None
    is_told: bool


MovementKind: TypeAlias = Literal["bought", "moved", "used", "counted", "written_off"]


class NewBladeWordRequest(TypedDict):
    name: str
    van: NotRequired[int | None]
    kind: NotRequired[BladeKind]
    hand: NotRequired[Hand]
    bought_on: str
    edge_angle: NotRequired[str | None]
    thickness_mm: NotRequired[str | None]
    hours_limit: NotRequired[str | None]
    cost: NotRequired[str | None]
    note: NotRequired[str]
    was_used: NotRequired[bool]


class NewLinkShown(TypedDict):
    id: int
    invoice: int
    made_at: str
    expires_at: str
    closed_at: str | None
    opened_at: str | None
    address: str | None


class NewsShown(TypedDict):
    text: str
    to: str
    phone: str
    is_told: bool


class OffSaidRequest(TypedDict):
    because: str
    visit: int


class OfferShown(TypedDict):
    way: Literal["fits", "moves", "asks", "puts_off"]
    van: int
    first: str
    last: str
    days_late: int
    is_between: bool
    after: str | None
    work_minutes: int | None
    metres: int | None
    money: str | None
    moved: MovedShown | None
    put_off: int | None


OutBecause: TypeAlias = Literal["crush", "van", "ill"]


class OutSaidRequest(TypedDict):
    van: int
    because: Literal["crush", "van"]
    since: str
    until: str


Outcome: TypeAlias = Literal["kept", "known", "refused"]


OutgoingState: TypeAlias = Literal["waiting", "going", "went", "failed", "lapsed", "left"]


class OutsideShown(TypedDict):
    id: int
    van: int
    name: str
    is_file: bool
    only_whole_days: bool
    keeps_titles: bool
    asked_at: str | None
    fetched_at: str | None
    read_at: str | None
    read_until: str | None
    left_out: int
    last_words: str
    made_at: str


class OutsideWordRequest(TypedDict):
    name: str
    url: NotRequired[str]
    file: NotRequired[str | None]
    only_whole_days: NotRequired[bool]
    keeps_titles: NotRequired[bool]


class OwedTold(TypedDict):
    currency: str
    total: str
    overdue: str
    unused: str
    debtors: list[DebtorShown]


class PaidBackOfRequest(TypedDict):
    payment: NotRequired[int | None]
    credit_note: NotRequired[int | None]


PaidState: TypeAlias = Literal["paid", "part", "open", "overdue"]


class PartyShown(TypedDict):
    name: NotRequired[str]
    address: NotRequired[str]
    country: NotRequired[str]
    vat_number: NotRequired[str]
    email: NotRequired[str]
    phone: NotRequired[str]


class PatchedBladeWordRequest(TypedDict):
    name: NotRequired[str]
    van: NotRequired[int | None]
    kind: NotRequired[BladeKind]
    hand: NotRequired[Hand]
    bought_on: NotRequired[str]
    edge_angle: NotRequired[str | None]
    thickness_mm: NotRequired[str | None]
    hours_limit: NotRequired[str | None]
    cost: NotRequired[str | None]
    note: NotRequired[str]


class PatchedContactWordRequest(TypedDict):
    name: NotRequired[str]
    part: NotRequired[str]
    phone: NotRequired[str]
    email: NotRequired[str]
    gets_reports: NotRequired[bool]
    gets_invitations: NotRequired[bool]
    told_by: NotRequired[Literal["", "mail", "sms"]]
    language: NotRequired[
        Literal[
            "en", "cy", "ga", "gd", "nl", "de", "fr", "es", "it", "pt", "da", "sv", "nb", "pl", "ro", "lt"
        ]
    ]


class PatchedCowWordRequest(TypedDict):
    number: NotRequired[str]
    status: NotRequired[CowStatus]
    born_on: NotRequired[str | None]
    calved_on: NotRequired[str | None]
    calving_due: NotRequired[str | None]
    dry_off_due: NotRequired[str | None]
    left_on: NotRequired[str | None]
    note: NotRequired[str]
    official_tag: NotRequired[str]
    electronic_id: NotRequired[str]
    freeze_brand: NotRequired[str]
    collar: NotRequired[str]
    lactation: NotRequired[int | None]


class PatchedFarmRulesWordRequest(TypedDict):
    rule_set: NotRequired[Literal["round", "dry_off", "spaced", "pressing"]]
    own: NotRequired[DraftRulesShownRequest]


class PatchedHeadWordRequest(TypedDict):
    note: NotRequired[str]
    order_number: NotRequired[str]
    buyer_reference: NotRequired[str]
    prepaid: NotRequired[str]
    tax_point: NotRequired[str]
    home_rate: NotRequired[str | None]
    reason: NotRequired[str]


class PatchedLineWordRequest(TypedDict):
    description: NotRequired[str]
    quantity: NotRequired[str]
    discount_percent: NotRequired[str | None]
    discount_amount: NotRequired[str | None]
    reason: NotRequired[str]


class PatchedMendWordRequest(TypedDict):
    distance: NotRequired[str]
    because: NotRequired[str]


class PatchedMessageHoursWordRequest(TypedDict):
    quiet_from: NotRequired[str]
    quiet_until: NotRequired[str]
    tomorrow_at: NotRequired[str]
    late_minutes: NotRequired[int]


class PatchedMilkingsWordRequest(TypedDict):
    milkings: NotRequired[list[MilkingLineRequest]]


class PatchedPayerWordRequest(TypedDict):
    name: NotRequired[str]
    address: NotRequired[str]
    country: NotRequired[str]
    email: NotRequired[str]
    vat_number: NotRequired[str]
    payment_days: NotRequired[int | None]


UsualWeekday: TypeAlias = int


class PatchedRightsWordRequest(TypedDict):
    rights: NotRequired[list[FarmRight]]


class PatchedTaxRateWordRequest(TypedDict):
    code: NotRequired[str]
    name: NotRequired[str]
    category: NotRequired[Literal["S", "Z", "E", "AE", "O"]]
    percent: NotRequired[str]
    valid_from: NotRequired[str]
    reason: NotRequired[str]
    reason_code: NotRequired[str]


SendToItem: TypeAlias = str


class PatchedTermsWordRequest(TypedDict):
    rhythm: NotRequired[BillingRhythm]
    tax_code: NotRequired[str]
    order_number: NotRequired[str]
    buyer_reference: NotRequired[str]
    send_to: NotRequired[list[SendToItem]]
    sends_xml: NotRequired[bool]
    payment_days: NotRequired[int | None]
    gets_reminders: NotRequired[bool]
    note: NotRequired[str]
    country: NotRequired[str]


class PatchedWatchContactWordRequest(TypedDict):
    name: NotRequired[str]
    phone: NotRequired[str]
    email: NotRequired[str]
    told_by: NotRequired[CalledBy]
    van: NotRequired[int | None]
    turn: NotRequired[int]


class PatchedWatchRulesWordRequest(TypedDict):
    is_on: NotRequired[bool]
    watches_plan: NotRequired[bool]
    grace_minutes: NotRequired[int]
    answer_minutes: NotRequired[int]
    repeat_minutes: NotRequired[int]


class PayerShown(TypedDict):
    id: int
    name: str
    address: str
    country: str
    email: str
    vat_number: str
    payment_days: int | None


class PayerWordRequest(TypedDict):
    name: str
    address: NotRequired[str]
    country: NotRequired[str]
    email: NotRequired[str]
    vat_number: NotRequired[str]
    payment_days: NotRequired[int | None]


PaymentMethod: TypeAlias = Literal["bank", "cash", "card", "cheque", "other"]


class PaymentRow(TypedDict):
    id: int
    farm: int
    received_on: str
    currency: str
    amount: str
    rest: str
    method: PaymentMethod
    reference: str
    payer_name: str
    note: str
    bank_entry: int | None
    pays_back: int | None
    noted_at: str
    taken_back_at: str | None
    taken_back_because: str


class PaymentWay(TypedDict):
    details: NotRequired[str]
    iban: NotRequired[str]
    bic: NotRequired[str]
    account_name: NotRequired[str]
    credit_terms: NotRequired[str]


PeriodKind: TypeAlias = Literal["month", "quarter", "year", "free"]


class PhotoKeptShown(TypedDict):
    uid: str
    size: int
    sha256: str


class PhotoShown(TypedDict):
    id: int
    uid: str
    visit: int
    trim: int | None
    foot: Foot | Literal[""]
    taken_at: str
    received_at: str
    size: int
    sha256: str


class PiecesTold(TypedDict):
    pieces: int


class PlaceShown(TypedDict):
    shift: str
    position: int
    day: str
    van: str
    after: str
    is_here: bool
    start: str | None
    finish: str | None
    price: str
    money: str
    why: str


class PlaceWordRequest(TypedDict):
    van: int
    first: str
    last: str
    moved_visit: NotRequired[int | None]
    to_van: NotRequired[int | None]
    to_day: NotRequired[str | None]


class PlacesShown(TypedDict):
    visit: int
    places: list[PlaceShown]
    out: str
    out_why: str
    has_begun: bool


class PlanCostShown(TypedDict):
    total: str
    late: str
    out: str
    bound: str | None
    seconds: float


PlanMaker: TypeAlias = Literal["planner", "hand"]


class PlanMealShown(TypedDict):
    start: str
    end: str


class PlanPromiseShown(TypedDict):
    farm: str
    sentence: str


class PlanStopShown(TypedDict):
    visit: int | None
    held_hour: int | None
    arrive: str
    start: str
    finish: str
    travel_minutes: float
    km: float
    days_late: int


class PlanWayShown(TypedDict):
    rule: str
    done: int
    left_out: int
    must_left_out: int
    km: float
    hours: float
    days_late: int
    money: str


class PlanWhyShown(TypedDict):
    visit: int
    is_left_out: bool
    sentences: list[str]


PowerSupply: TypeAlias = Literal["none", "13A", "32A"]


Pressing: TypeAlias = Literal["today", "soon", "not_yet"]


PriceItem: TypeAlias = Literal[
    "functional",
    "corrective",
    "check",
    "block",
    "shoe",
    "wrap",
    "dressing",
    "call_out",
    "urgent",
    "out_of_hours",
    "kilometre",
    "mile",
    "travel",
    "minimum",
    "other",
]


class Fault(TypedDict):
    field: str
    reason: str


class Problem(TypedDict):
    type: str
    title: str
    status: int
    code: str
    detail: str
    faults: NotRequired[list[Fault]]


class ProblemShown(TypedDict):
    format: str
    timezone: str
    bases: list[dict[str, Any]]
    sites: list[dict[str, Any]]
    travel: dict[str, Any]
    shifts: list[dict[str, Any]]
    jobs: list[dict[str, Any]]


Promise: TypeAlias = Literal["confirmed", "told", "planned"]


class ProposedShown(TypedDict):
    invoice: int
    amount: str


class ProposedTold(TypedDict):
    new: int


class PurchaseWordRequest(TypedDict):
    at: NotRequired[str]
    note: NotRequired[str]
    place: int
    supplier: NotRequired[str]
    items: list[BoughtLineRequest]


PutRight: TypeAlias = Literal["ground_out", "mended", "replaced"]


RateRule: TypeAlias = Literal["each_day", "last_half", "first_of_half", "at_the_start"]


class ReadWordRequest(TypedDict):
    mapping: MappingWordRequest
    keep_as: NotRequired[str]


class ReadingTold(TypedDict):
    file: int
    is_read: bool
    new: int
    known: int
    warnings: list[str]


class ReadyTold(TypedDict):
    visit_count: int
    visits: list[int]
    months: list[int]
    running: list[int]
    late: list[int]
    left: list[int]


class ReasonWordRequest(TypedDict):
    reason: str


RecheckCause: TypeAlias = Literal["block", "lesion", "lame_trim", "by_hand"]


class RecheckShown(TypedDict):
    id: int
    farm: int
    cow: int
    number: str
    foot: Foot
    cause: RecheckCause
    what: str
    due_from: str
    due_until: str
    from_trim: int
    visit: int | None
    closed_on: str | None
    closed_by_trim: int | None
    closed_because: str


class RechecksTold(TypedDict):
    due: list[DueDays]
    overdue_days: int


class RecipeShown(TypedDict):
    per: str
    block_kind: str
    quantity: str


class ReferenceRateShown(TypedDict):
    id: int
    valid_from: str
    percent: str
    source: str


class ReferenceRateWordRequest(TypedDict):
    valid_from: str
    percent: str
    source: str


class ReferralShown(TypedDict):
    foot: Foot | Literal[""]
    reason: str
    told_whom: str
    told_at: str | None


class RefusedVisit(TypedDict):
    visit: int
    why: str


ReminderState: TypeAlias = Literal["proposed", "approved", "dropped"]


class ReportShown(TypedDict):
    id: int
    version: int
    sha256: str
    made_at: str
    changed: str
    visit: int
    mailed_to: list[str] | None


class RoundShown(TypedDict):
    id: int
    farm: int
    scored_on: str
    scale: MobilityScale
    scored_by: str
    whole_herd: bool
    noted_at: str


class RoundWordRequest(TypedDict):
    scored_on: str
    scale: MobilityScale
    scored_by: NotRequired[str]
    whole_herd: NotRequired[bool]
    scores: list[CowScoreWordRequest]


RoundingRule: TypeAlias = Literal["per_rate", "per_line", "total", "total_down"]


class RuleSetShown(TypedDict):
    rule_set: str
    name: str
    told: str
    rules: DraftRulesShown


class RuleSetsShown(TypedDict):
    items: list[RuleSetShown]


class RulesShown(TypedDict):
    rounding_rule: RoundingRule
    tax_name: str
    registration_name: str
    registration_number: str
    invoice_prefix: str
    credit_prefix: str
    series_by_year: bool
    account_name: str
    iban: str
    bic: str
    credit_terms: str
    cash_discount_percent: str
    cash_discount_days: int
    reminder_days: list[int]
    charges_interest: bool
    interest_margin: str
    interest_days_in_year: int
    rate_rule: RateRule
    fixed_sums: list[FixedSum]
    distance_unit: DistanceUnit
    bills_from: str | None
    books_begin_month: int
    has_logo: bool


class RunTold(TypedDict):
    asked: int


Draft: TypeAlias = int


class RunWordRequest(TypedDict):
    drafts: NotRequired[list[Draft]]
    send: NotRequired[bool]


class ScoreShown(TypedDict):
    cow: int
    number: str
    score: int


class SendWordRequest(TypedDict):
    send: NotRequired[bool]


SentPaper: TypeAlias = Literal["invoice", "reminder", "statement"]


class SetOffWordRequest(TypedDict):
    invoice: int
    amount: NotRequired[str]


SettledBy: TypeAlias = Literal["payment", "credit", "write_off"]


class ShareWordRequest(TypedDict):
    invoice: int
    amount: str


class SharesWordRequest(TypedDict):
    shares: list[ShareWordRequest]


SharpenMethod: TypeAlias = Literal["stone", "file", "belt", "wheel", "strop", "sent_away"]


class SharpenedWordRequest(TypedDict):
    blade: int
    before: NotRequired[EdgeBefore]
    felt: NotRequired[EdgeFelt | None]
    angle: NotRequired[str | None]
    minutes: NotRequired[str | None]
    cows_by_hand: NotRequired[int | None]
    chip_is_out: NotRequired[bool]


class SharpeningShown(TypedDict):
    id: int
    blade: int
    at: str
    method: SharpenMethod | Literal[""]
    grit: int | None
    angle: str | None
    minutes: str | None
    done_by: str
    felt: EdgeFelt | Literal[""]
    before: EdgeBefore
    cows_since_last: int | None
    note: str


class SharpeningWordRequest(TypedDict):
    sharpened_at: NotRequired[str]
    method: NotRequired[SharpenMethod | None]
    grit: NotRequired[int | None]
    done_by: NotRequired[str]
    note: NotRequired[str]
    blades: list[SharpenedWordRequest]


class SharpeningsTold(TypedDict):
    sharpenings: list[SharpeningShown]


Shelter: TypeAlias = Literal["open", "roof", "indoors"]


class SignOffWordRequest(TypedDict):
    signed_by: str
    washed_down: bool
    hygiene_note: NotRequired[str]
    was_done: NotRequired[str]
    farm_to_do: NotRequired[str]


class SoldShown(TypedDict):
    currency: str
    net: str
    tax: str


class StartWordRequest(TypedDict):
    checked: bool


StepRule: TypeAlias = Literal["whole", "slices"]


class StepWord(TypedDict):
    from_quantity: int
    unit_price: str


class StepWordRequest(TypedDict):
    from_quantity: int
    unit_price: str


class StockAtPlace(TypedDict):
    place: int
    balance: str
    is_told: bool
    counted_at: str | None


class StockCountWordRequest(TypedDict):
    at: NotRequired[str]
    note: NotRequired[str]
    place: int
    items: list[AmountLineRequest]


class StockLine(TypedDict):
    consumable: int
    name: str
    unit: str
    balance: str
    places: list[StockAtPlace]


class StockMoveWordRequest(TypedDict):
    at: NotRequired[str]
    note: NotRequired[str]
    from_place: int
    to_place: int
    items: list[AmountLineRequest]
    is_really_there: NotRequired[bool]


class StockPlaceShown(TypedDict):
    id: int
    name: str
    van: int | None


class StockTold(TypedDict):
    items: list[StockLine]


class SuggestedRate(TypedDict):
    code: str
    name: str
    category: str
    percent: str
    valid_from: str
    reason: str
    reason_code: str
    source: str


class SuggestionsTold(TypedDict):
    country: str
    tax_name: str
    rates: list[SuggestedRate]


class SumShown(TypedDict):
    before: str
    after: str


class SupplyLineShown(TypedDict):
    id: int
    consumable: int
    quantity: str
    arrived: str
    expected_on: str
    closed_at: str | None


class SupplyOrderShown(TypedDict):
    id: int
    supplier: str
    ordered_at: str
    mailed_to: str
    note: str
    called_off_at: str | None
    lines: list[SupplyLineShown]


SeenItem: TypeAlias = int


class SwitchWordRequest(TypedDict):
    kind: MessageKind
    is_on: bool


class TakeWordRequest(TypedDict):
    start: NotRequired[str | None]


class TakenInTold(TypedDict):
    new: int


class TaxRateShown(TypedDict):
    id: int
    code: str
    name: str
    category: Literal["S", "Z", "E", "AE", "O"]
    percent: str
    valid_from: str
    reason: str
    reason_code: str


class TaxRateWordRequest(TypedDict):
    code: str
    name: NotRequired[str]
    category: Literal["S", "Z", "E", "AE", "O"]
    percent: str
    valid_from: str
    reason: NotRequired[str]
    reason_code: NotRequired[str]


class TaxShareShown(TypedDict):
    category: str
    percent: str
    taxable: str
    tax: str


class TermsShown(TypedDict):
    farm: int
    rhythm: BillingRhythm
    tax_code: str
    order_number: str
    buyer_reference: str
    send_to: list[str]
    sends_xml: bool
    payment_days: int | None
    gets_reminders: bool
    note: str
    country: str


class ToldShown(TypedDict):
    id: int
    visit: int
    contact: str | None
    kind: MessageKind
    hour: str | None
    latest: str | None
    made_at: str
    channel: str | None
    state: str | None


TravelRule: TypeAlias = Literal["none", "distance", "band", "shared"]


class TrimFiguresTold(TypedDict):
    shortest_wall_mm: int
    wall_measured_from: str
    toe_angle_from: int
    toe_angle_to: int
    belly_band_minutes: int
    feet_lifted: int


TrimKind: TypeAlias = Literal["functional", "corrective", "check"]


Unit: TypeAlias = Literal["each", "pair", "ml", "g"]


class UnlockShown(TypedDict):
    was_locked: bool


UseOf: TypeAlias = Literal["cow", "visit", "wash", "by_hand"]


UsePer: TypeAlias = Literal["block", "wrap", "dressing", "foot", "cow", "visit"]


class UseWordRequest(TypedDict):
    consumable: int
    extra: str


class VanCheckTold(TypedDict):
    van: int
    day: str | None
    farms: int
    cows: int
    sure: float
    cold: list[str]
    seen: int
    items: list[CheckLine]


Weekday: TypeAlias = int


class VanHoursWord(TypedDict):
    weekdays: list[Weekday]
    starts: str
    ends: str
    max_work_minutes: int
    max_cows: int
    meal_minutes: int
    meal_earliest: str
    meal_latest: str


class VanHoursWordRequest(TypedDict):
    weekdays: list[Weekday]
    starts: str
    ends: str
    max_work_minutes: int
    max_cows: int
    meal_minutes: int
    meal_earliest: str
    meal_latest: str


class VanOutShown(TypedDict):
    id: int
    since: str
    until: str
    because: OutBecause


class VanOutWordRequest(TypedDict):
    because: OutBecause
    since: str
    until: str


class VanShown(TypedDict):
    id: int
    name: str
    trimmer: int
    base_name: str
    base_latitude: str
    base_longitude: str
    cost_per_day: str
    cost_per_work_hour: str
    cost_per_km: str
    is_active: bool
    trimmer_name: str
    hours: VanHoursWord | None
    days_off: list[DayOffShown]
    outs: list[VanOutShown]


class VanWordRequest(TypedDict):
    name: str
    trimmer: int
    base_name: NotRequired[str]
    base_latitude: str
    base_longitude: str
    cost_per_day: NotRequired[str]
    cost_per_work_hour: NotRequired[str]
    cost_per_km: NotRequired[str]
    is_active: NotRequired[bool]
    hours: VanHoursWordRequest


class VersionShown(TypedDict):
    at: str
    by: str
    words: list[str]
    shows: bool
    is_gone: bool


class VersionsShown(TypedDict):
    visit: int
    is_taken_back: bool
    versions: list[VersionShown]


class VetPassMade(TypedDict):
    id: int
    farm: int
    vet_name: str
    email: str
    shows_letters: bool
    shows_reports: bool
    shows_cows: bool
    shows_photos: bool
    shows_figures: bool
    made_at: str
    expires_at: str
    closed_at: str | None
    opened_at: str | None
    stands: bool
    link: str | None


class VetPassShown(TypedDict):
    id: int
    farm: int
    vet_name: str
    email: str
    shows_letters: bool
    shows_reports: bool
    shows_cows: bool
    shows_photos: bool
    shows_figures: bool
    made_at: str
    expires_at: str
    closed_at: str | None
    opened_at: str | None
    stands: bool


class VetPassWordRequest(TypedDict):
    vet_name: str
    email: NotRequired[str]
    days: int
    shows_letters: NotRequired[bool]
    shows_reports: NotRequired[bool]
    shows_cows: NotRequired[bool]
    shows_photos: NotRequired[bool]
    shows_figures: NotRequired[bool]


VisitReason: TypeAlias = Literal["routine", "urgent", "recheck"]


VisitState: TypeAlias = Literal["wanted", "planned", "confirmed", "under_way", "finished", "called_off"]


class VisitUseShown(TypedDict):
    consumable: int
    name: str
    by_cows: str
    once: str
    mixed: str
    by_hand: str
    used: str


class VisitUsesShown(TypedDict):
    items: list[VisitUseShown]
    cost: str
    is_cost_known: bool


class WantedWordRequest(TypedDict):
    consumable: int
    packs: int


class WashDownShown(TypedDict):
    id: int
    visit: int
    farm: int
    van: int | None
    substance: str
    dilution: str
    contact_minutes: str
    consumable: int | None
    litres: str | None
    washed_at: str


WashStand: TypeAlias = Literal["done", "due", "urgent"]


class WatchContactShown(TypedDict):
    id: int
    name: str
    phone: str
    email: str
    told_by: CalledBy
    van: int | None
    turn: int


class WatchContactWordRequest(TypedDict):
    name: str
    phone: NotRequired[str]
    email: NotRequired[str]
    told_by: NotRequired[CalledBy]
    van: NotRequired[int | None]
    turn: NotRequired[int]


WatchEnd: TypeAlias = Literal["finished", "well", "found", "called_off", "not_there", "tried"]


class WatchEventShown(TypedDict):
    at: str
    noted_at: str
    words: str


class WatchMessageShown(TypedDict):
    channel: str
    state: str


class WatchRulesShown(TypedDict):
    is_on: bool
    watches_plan: bool
    grace_minutes: int
    answer_minutes: int
    repeat_minutes: int
    changed_at: str | None
    why_not: str
    cautions: list[str]


WatchState: TypeAlias = Literal["watching", "asked", "told", "ended"]


class WeatherShown(TypedDict):
    id: int
    day: str
    lowest_celsius: str
    highest_celsius: str | None
    noted_at: str


class WeatherWordRequest(TypedDict):
    day: str
    lowest_celsius: str
    highest_celsius: NotRequired[str | None]


WeekPlanState: TypeAlias = Literal["thinking", "proposed", "accepted", "set_aside", "failed"]


class WellWordRequest(TypedDict):
    is_done: NotRequired[bool]


class WholeLetterShown(TypedDict):
    id: int
    version: int
    sha256: str
    made_at: str
    changed: str
    trim: int
    content: dict[str, Any]


class WholeReportShown(TypedDict):
    id: int
    version: int
    sha256: str
    made_at: str
    changed: str
    visit: int
    mailed_to: list[str] | None
    content: dict[str, Any]


class WholeRoundShown(TypedDict):
    id: int
    farm: int
    scored_on: str
    scale: MobilityScale
    scored_by: str
    whole_herd: bool
    noted_at: str
    scores: list[ScoreShown]


class WholeShown(TypedDict):
    id: int
    is_charge: bool
    amount: str
    base: str | None
    percent: str | None
    reason: str
    tax_category: str
    tax_percent: str


class WholeWordRequest(TypedDict):
    is_charge: NotRequired[bool]
    percent: NotRequired[str | None]
    amount: NotRequired[str | None]
    tax_category: NotRequired[Literal["S", "Z", "E", "AE", "O"] | None]
    tax_percent: NotRequired[str | None]
    reason: str


class WhyNotShown(TypedDict):
    monday: str
    why: str


class WhyOffWordRequest(TypedDict):
    because: str


WriteOffReason: TypeAlias = Literal["expired", "broken", "lost", "given", "other"]


class WriteOffWordRequest(TypedDict):
    at: NotRequired[str]
    note: NotRequired[str]
    place: int
    because: WriteOffReason
    items: list[AmountLineRequest]
    is_really_there: NotRequired[bool]


WritingKind: TypeAlias = Literal["cow", "wash", "kit", "blade", "sign_off"]


BookPart: TypeAlias = Any


ListedPart: TypeAlias = Any


class AcceptedTold(TypedDict):
    payments: list[int]
    refused: list[EntryRefused]


class AcceptedWordRequest(TypedDict):
    farm: int
    shares: NotRequired[list[ShareWordRequest]]
    entry: int


class AccountLineShown(TypedDict):
    day: str
    what: AccountWhat
    amount: str
    balance: str
    number: str
    due_on: str | None
    more: str
    invoice: int | None
    payment: int | None


class AccountTold(TypedDict):
    currency: str
    first: str
    last: str
    opening: str
    closing: str
    lines: list[AccountLineShown]


class ActionShown(TypedDict):
    kind: ActionKind
    claw: Claw | Literal[""]
    block_kind: BlockKind | Literal[""]


class AddedPiece(TypedDict):
    trim: int | None
    item: PriceItem
    words: str


class AgreedWordRequest(TypedDict):
    kind: AgreementKind
    amount: str
    item: NotRequired[PriceItem | None]
    why: str
    valid_from: str
    valid_until: NotRequired[str | None]


class AgreementShown(TypedDict):
    id: int
    farm: int
    kind: AgreementKind
    item: PriceItem | None
    amount: str
    why: str
    valid_from: str
    valid_until: str | None


class AllocationShown(TypedDict):
    id: int
    kind: SettledBy
    invoice: int
    payment: int | None
    credit_note: int | None
    currency: str
    amount: str
    on: str
    reason: str
    noted_at: str
    undone_at: str | None
    undone_because: str


class ArrivalWordRequest(TypedDict):
    place: int
    at: NotRequired[str]
    note: NotRequired[str]
    lines: list[ArrivedWordRequest]


class BankMappingShown(TypedDict):
    id: int
    name: str
    mapping: MappingWord


class BladeShown(TypedDict):
    id: int
    name: str
    van: int | None
    kind: BladeKind
    hand: Hand
    bought_on: str
    edge_angle: str | None
    thickness_mm: str | None
    hours_limit: str | None
    cost: str | None
    note: str
    state: BladeState
    state_since: str
    fault: BladeFault | Literal[""]


class BladeStateWordTakenRequest(TypedDict):
    state: BladeState
    fault: NotRequired[BladeFault | None]
    put_right: NotRequired[PutRight | None]
    note: NotRequired[str]


class BlockShown(TypedDict):
    id: int
    cow: int
    number: str
    foot: Foot
    claw: Claw
    kind: BlockKind
    put_on: str
    put_on_by: int
    off_due: str
    off_on: str | None
    off_by: int | None


class BookTold(TypedDict):
    part: BookPart
    first: str
    last: str
    columns: list[str]
    row_count: int
    rows: list[list[str | None]]
    sums: list[ColumnSum]


class BooksTold(TypedDict):
    first: str
    last: str
    by: BookDay
    locked_until: str | None
    sold: list[SoldShown]
    parts: list[ListedPart]


class ChangeShown(TypedDict):
    id: int
    at: str
    by: int | None
    by_name: str
    via: str
    seen_from: str
    request: str
    kind: EntryKind
    what: str
    row_id: int
    under: str
    before: dict[str, Any]
    after: dict[str, Any]
    blotted_at: str | None
    digest: str


class ClientShown(TypedDict):
    id: int
    farm: int
    name: str
    email: str
    joined_at: str | None
    rights: list[FarmRight]


class ClientWordRequest(TypedDict):
    name: str
    email: str
    rights: NotRequired[list[FarmRight]]


class ColumnsTold(TypedDict):
    mapping: MappingWord
    rows: list[list[str]]


class ComparedShown(TypedDict):
    visit: int
    farm: str
    change: Change
    before: HourShown | None
    after: HourShown | None
    promise: Promise | None
    told: str | None
    asks: bool
    is_fact: bool
    message: NewsShown | None


class ConsumableShown(TypedDict):
    id: int
    name: str
    kind: ConsumableKind
    size: str
    unit: Unit
    is_active: bool
    supplier: str
    supplier_email: str
    pack: str
    price: str | None
    lead_days: int
    service_percent: str | None
    shelf_days: int | None
    lowest_celsius: str | None
    grams_per_ml: str | None
    active_substance: str
    dilution: str
    contact_minutes: str | None
    note: str
    recipe: list[RecipeShown]


class CountTold(TypedDict):
    items: list[CountedLine]


class CowRowRequest(TypedDict):
    id: NotRequired[int]
    number: NotRequired[str]
    status: NotRequired[CowStatus]
    born_on: NotRequired[str | None]
    calved_on: NotRequired[str | None]
    calving_due: NotRequired[str | None]
    dry_off_due: NotRequired[str | None]
    left_on: NotRequired[str | None]
    note: NotRequired[str]
    official_tag: NotRequired[str]
    electronic_id: NotRequired[str]
    freeze_brand: NotRequired[str]
    collar: NotRequired[str]
    lactation: NotRequired[int | None]


class CowRowsRequest(TypedDict):
    rows: list[CowRowRequest]


class CowShown(TypedDict):
    id: int
    farm: int
    number: str
    status: CowStatus
    born_on: str | None
    calved_on: str | None
    calving_due: str | None
    dry_off_due: str | None
    left_on: str | None
    note: str
    entered_on: str | None
    official_tag: str
    electronic_id: str
    freeze_brand: str
    collar: str
    calvings: list[CalvingLine]


class CowVersionsShown(TypedDict):
    items: list[VersionsShown]


class CowWishWordRequest(TypedDict):
    mobility_scale: NotRequired[MobilityScale | None]
    mobility_score: NotRequired[int | None]
    cow: int
    why: NotRequired[str]
    lame_since: NotRequired[str | None]


class CowsKept(TypedDict):
    rows: list[CowShown]


class CreditLeftTold(TypedDict):
    currency: str
    lines: list[LineLeft]


class CrushAnswerShown(TypedDict):
    uid: str
    outcome: Outcome
    faults: list[CrushFaultShown]
    shows: str | None
    beside: list[str]


class CrushOtherShown(TypedDict):
    uid: str
    kind: WritingKind
    record: str
    cow_id: int | None
    after: str | None
    made_at: str
    not_before: str | None
    is_gone: bool
    content: dict[str, Any]
    placed_at: str
    by: str
    phone: str
    shows: bool
    beside: list[str]


class CrushVisitShown(TypedDict):
    state: VisitState
    started_at: str | None
    finished_at: str | None


class DraftChangeShown(TypedDict):
    id: int
    cow: int
    kind: DraftKind
    why: str
    at: str
    by: str


class DraftLineShown(TypedDict):
    cow: int
    number: str
    need: Literal["lame", "due", "asked", "dry_off", "heifer", "in_milk", "long_ago"]
    reasons: list[str]
    warning: str
    mobility_scale: MobilityScale | None
    mobility_score: int | None
    is_promised: bool


class DraftListShown(TypedDict):
    visit: int
    day: str
    rule_set: str
    present: list[DraftLineShown]
    left_for_next: list[DraftLineShown]
    changes: list[DraftChangeShown]
    length: DraftLengthShown
    free_places: int
    lame_left: int
    may_change: bool


class DraftedAllTold(TypedDict):
    drafts: list[int]
    free: list[int]
    refused: list[RefusedVisit]


class EndedTold(TypedDict):
    agreement: AgreementShown | None


class EventShown(TypedDict):
    before: VisitState | Literal[""]
    after: VisitState
    at: str
    by: str | None
    note: str | None


class FarmShown(TypedDict):
    id: int
    name: str
    address: str
    country: str
    latitude: str
    longitude: str
    access_notes: str | None
    payer: int | None
    email: str
    phone: str
    vat_number: str | None
    herd_size: int
    routine_interval_days: int
    routine_cows: int
    rest_after_milking_minutes: int
    crush_place: CrushPlace
    has_hard_standing: bool
    has_water: bool
    has_light: bool
    power: PowerSupply
    shelter: Shelter
    hygiene_level: Literal[0, 1, 2, 3]
    hygiene_reason: str | None
    wash_rule: str
    is_active: bool
    hygiene_since: str | None
    erased_at: str | None


class FarmWishWordRequest(TypedDict):
    mobility_scale: NotRequired[MobilityScale | None]
    mobility_score: NotRequired[int | None]
    reason: VisitReason
    asked_by: NotRequired[str]
    due_from: str
    due_until: str
    head_count: int
    corrective_count: NotRequired[int]
    note: NotRequired[str]
    cows: NotRequired[list[CowWishWordRequest]]
    farm: int


class FarmWordRequest(TypedDict):
    name: str
    address: NotRequired[str]
    country: NotRequired[str]
    latitude: str
    longitude: str
    access_notes: NotRequired[str]
    payer: NotRequired[int | None]
    email: NotRequired[str]
    phone: NotRequired[str]
    vat_number: NotRequired[str]
    herd_size: NotRequired[int]
    routine_interval_days: NotRequired[int]
    routine_cows: NotRequired[int]
    rest_after_milking_minutes: NotRequired[int]
    crush_place: NotRequired[CrushPlace]
    has_hard_standing: NotRequired[bool]
    has_water: NotRequired[bool]
    has_light: NotRequired[bool]
    power: NotRequired[PowerSupply]
    shelter: NotRequired[Shelter]
    hygiene_level: NotRequired[Literal[0, 1, 2, 3]]
    hygiene_reason: NotRequired[str]
    wash_rule: NotRequired[str]
    is_active: NotRequired[bool]


class FiguresTold(TypedDict):
    visit_length: dict[str, Any]
    rechecks: RechecksTold
    planning: dict[str, Any]
    trim: TrimFiguresTold
    kit: dict[str, Any]


class FindingShown(TypedDict):
    lesion: LesionCode
    claw: Claw
    zone: int | None
    zone_map: Literal["ILC"]
    severity: int
    dd_stage: DDStage | Literal[""]


class FootShown(TypedDict):
    foot: Foot
    wall_mm: int | None
    wall_measured_from: str
    toe_angle: int | None
    look_again_days: int | None
    for_vet: str
    has_pain: bool
    has_swelling: bool
    swelling_above_dewclaw: bool
    has_bad_smell: bool
    drew_blood: bool
    sensitive_tissue: bool
    deep_infection: bool
    no_better_at_recheck: bool
    findings: list[FindingShown]
    actions: list[ActionShown]


class HeldShown(TypedDict):
    id: int
    farm: int
    reason: VisitReason
    asked_by: str
    due_from: str
    due_until: str
    head_count: int
    corrective_count: int
    mobility_scale: str
    mobility_score: int | None
    note: str | None
    minutes: int
    van: int
    start: str
    first_start: str
    last_start: str
    moved_visit: int | None
    moved_van: int | None
    moved_start: str | None
    held_at: str
    until: str
    state: HeldState
    is_in_force: bool
    ended_at: str | None
    visit: int | None


class HerdShown(TypedDict):
    answer: str
    facts: str
    findings: list[HerdFindingShown]
    tables: list[HerdTableShown]
    years: list[int]
    cautions: list[str]


class HoldWordRequest(TypedDict):
    mobility_scale: NotRequired[MobilityScale | None]
    mobility_score: NotRequired[int | None]
    reason: VisitReason
    asked_by: NotRequired[str]
    due_from: str
    due_until: str
    head_count: int
    corrective_count: NotRequired[int]
    note: NotRequired[str]
    cows: NotRequired[list[CowWishWordRequest]]
    place: PlaceWordRequest


class InvoiceRow(TypedDict):
    id: int
    kind: InvoiceKind
    state: InvoiceState
    number: str
    farm: int
    payer: int | None
    visit: int | None
    corrects: int | None
    issued_on: str | None
    tax_point: str
    due_on: str | None
    period_from: str | None
    period_until: str | None
    currency: str
    net: str
    tax: str
    gross: str
    prepaid: str
    payable: str
    settled: str
    open_amount: str
    is_open: bool
    paid: PaidState | None


class ItemWord(TypedDict):
    item: PriceItem
    tax_code: str
    steps: list[StepWord]


class ItemWordRequest(TypedDict):
    item: PriceItem
    tax_code: str
    steps: list[StepWordRequest]


class LameSaidRequest(TypedDict):
    mobility_scale: NotRequired[MobilityScale | None]
    mobility_score: NotRequired[int | None]
    farm: int
    head_count: NotRequired[int]
    due_until: str
    asked_by: str


class LateWorkTold(TypedDict):
    added: list[AddedPiece]
    gone: list[GonePiece]


class LineShown(TypedDict):
    id: int
    position: int
    item: PriceItem
    visit: int | None
    done_on: str | None
    description: str
    quantity: str
    unit: str
    unit_price: str
    allowance: str
    allowance_percent: str | None
    allowance_reason: str
    tax_category: str
    tax_percent: str
    tax_reason: str
    tax_reason_code: str
    net: str
    credits: int | None
    why: str | None
    is_by_hand: bool | None


class ListedChange(TypedDict):
    cow: int
    line: int
    number: str
    changes: list[ListedFieldChange]


class MailShown(TypedDict):
    id: int
    paper: SentPaper
    farm: int
    invoice: int | None
    reminder: int | None
    with_xml: bool
    with_link: bool
    address: str
    subject: str
    state: OutgoingState
    written_at: str
    went_at: str | None
    last_words: str


class MailsTold(TypedDict):
    mails: list[MailShown]


class MatchWordRequest(TypedDict):
    farm: int
    shares: NotRequired[list[ShareWordRequest]]


class MessageHoursShown(TypedDict):
    quiet_from: str
    quiet_until: str
    tomorrow_at: str
    late_minutes: int
    switched_on: list[MessageKind]


class MovementShown(TypedDict):
    id: int
    consumable: int
    place: int
    kind: MovementKind
    quantity: str
    at: str
    lot: int | None
    cost: str | None
    use_of: UseOf | Literal[""]
    trim: int | None
    visit: int | None
    because: WriteOffReason | Literal[""]
    note: str
    noted_at: str


class MovementsTold(TypedDict):
    lines: list[MovementShown]


class NextYardTold(TypedDict):
    van: int
    next_visit: int | None
    last_visit: int | None
    stand: WashStand | None
    what: str
    why: str


class OffersShown(TypedDict):
    due_from: str
    due_until: str
    minutes: int
    hold_minutes: int
    offers: list[OfferShown]
    why_not: list[WhyNotShown]


class OrderRowTold(TypedDict):
    consumable: int
    name: str
    supplier: str
    pressing: Pressing
    packs: int
    why: str
    order_by: str | None
    there: str
    cost: str | None


class PaidBackWordRequest(TypedDict):
    paid_on: str
    amount: str
    method: PaymentMethod
    note: NotRequired[str]


class PatchedFarmWordRequest(TypedDict):
    name: NotRequired[str]
    address: NotRequired[str]
    country: NotRequired[str]
    latitude: NotRequired[str]
    longitude: NotRequired[str]
    access_notes: NotRequired[str]
    payer: NotRequired[int | None]
    email: NotRequired[str]
    phone: NotRequired[str]
    vat_number: NotRequired[str]
    herd_size: NotRequired[int]
    routine_interval_days: NotRequired[int]
    routine_cows: NotRequired[int]
    rest_after_milking_minutes: NotRequired[int]
    crush_place: NotRequired[CrushPlace]
    has_hard_standing: NotRequired[bool]
    has_water: NotRequired[bool]
    has_light: NotRequired[bool]
    power: NotRequired[PowerSupply]
    shelter: NotRequired[Shelter]
    hygiene_level: NotRequired[Literal[0, 1, 2, 3]]
    hygiene_reason: NotRequired[str]
    wash_rule: NotRequired[str]
    is_active: NotRequired[bool]


class PatchedPriceListWordRequest(TypedDict):
    name: NotRequired[str]
    valid_from: NotRequired[str]
    prices: NotRequired[list[ItemWordRequest]]
    step_rule: NotRequired[StepRule]
    travel_rule: NotRequired[TravelRule]
    travel_unit: NotRequired[DistanceUnit]
    bands: NotRequired[list[BandWordRequest]]
    minimum_charge: NotRequired[str]
    guarantee_days: NotRequired[int]
    usual_from: NotRequired[str | None]
    usual_until: NotRequired[str | None]
    usual_weekdays: NotRequired[list[UsualWeekday]]


class PatchedRulesWordRequest(TypedDict):
    rounding_rule: NotRequired[RoundingRule]
    tax_name: NotRequired[str]
    registration_name: NotRequired[str]
    registration_number: NotRequired[str]
    invoice_prefix: NotRequired[str]
    credit_prefix: NotRequired[str]
    series_by_year: NotRequired[bool]
    account_name: NotRequired[str]
    iban: NotRequired[str]
    bic: NotRequired[str]
    credit_terms: NotRequired[str]
    cash_discount_percent: NotRequired[str]
    cash_discount_days: NotRequired[int]
    reminder_days: NotRequired[list[int]]
    charges_interest: NotRequired[bool]
    interest_margin: NotRequired[str]
    interest_days_in_year: NotRequired[int]
    rate_rule: NotRequired[RateRule]
    fixed_sums: NotRequired[list[FixedSumRequest]]
    distance_unit: NotRequired[DistanceUnit]
    bills_from: NotRequired[str | None]
    books_begin_month: NotRequired[int]


class PatchedVanWordRequest(TypedDict):
    name: NotRequired[str]
    trimmer: NotRequired[int]
    base_name: NotRequired[str]
    base_latitude: NotRequired[str]
    base_longitude: NotRequired[str]
    cost_per_day: NotRequired[str]
    cost_per_work_hour: NotRequired[str]
    cost_per_km: NotRequired[str]
    is_active: NotRequired[bool]
    hours: NotRequired[VanHoursWordRequest]


class PaymentShown(TypedDict):
    id: int
    farm: int
    received_on: str
    currency: str
    amount: str
    rest: str
    method: PaymentMethod
    reference: str
    payer_name: str
    note: str
    bank_entry: int | None
    pays_back: int | None
    noted_at: str
    taken_back_at: str | None
    taken_back_because: str
    parts: list[AllocationShown]


class PaymentWordRequest(TypedDict):
    farm: int
    received_on: str
    amount: str
    method: PaymentMethod
    reference: NotRequired[str]
    payer_name: NotRequired[str]
    note: NotRequired[str]
    shares: NotRequired[list[ShareWordRequest]]


class PlanReasonsShown(TypedDict):
    visits: list[PlanWhyShown]
    promises: list[PlanPromiseShown]
    ways: list[PlanWayShown]
    is_complete: bool


class PlanShiftShown(TypedDict):
    shift: str
    van: int
    day: str
    leave: str | None
    back: str | None
    work_minutes: float
    km: float
    cows: int
    meal: PlanMealShown | None
    stops: list[PlanStopShown]


class PlanShown(TypedDict):
    id: int
    monday: str
    state: WeekPlanState
    percent: int
    progress_text: str
    failure: str
    made_by: PlanMaker
    what_changed: str
    follows: int | None
    because: str
    is_replan: bool
    asked_at: str
    asked_by: str
    stop_asked_at: str | None
    finished_at: str | None
    accepted_at: str | None


class PriceListShown(TypedDict):
    name: str
    valid_from: str
    prices: list[ItemWord]
    step_rule: NotRequired[StepRule]
    travel_rule: NotRequired[TravelRule]
    travel_unit: NotRequired[DistanceUnit]
    bands: NotRequired[list[BandWord]]
    minimum_charge: NotRequired[str]
    guarantee_days: NotRequired[int]
    usual_from: NotRequired[str | None]
    usual_until: NotRequired[str | None]
    usual_weekdays: NotRequired[list[UsualWeekday]]
    id: int


class PriceListWordRequest(TypedDict):
    name: str
    valid_from: str
    prices: list[ItemWordRequest]
    step_rule: NotRequired[StepRule]
    travel_rule: NotRequired[TravelRule]
    travel_unit: NotRequired[DistanceUnit]
    bands: NotRequired[list[BandWordRequest]]
    minimum_charge: NotRequired[str]
    guarantee_days: NotRequired[int]
    usual_from: NotRequired[str | None]
    usual_until: NotRequired[str | None]
    usual_weekdays: NotRequired[list[UsualWeekday]]


class ProposalShown(TypedDict):
    farm: int
    confidence: str
    shares: list[ProposedShown]
    reasons: list[str]
    against: list[str]


class RecipeWordRequest(TypedDict):
    per: UsePer
    block_kind: NotRequired[BlockKind | None]
    quantity: str
    unit: NotRequired[Unit | None]


class ReminderRow(TypedDict):
    id: int
    invoice: int
    step: int
    state: ReminderState
    proposed_at: str
    decided_at: str | None
    dropped_because: str
    reckoned_on: str | None
    currency: str
    open_amount: str
    interest: str
    fixed_sum: str
    working: str


class ReminderShown(TypedDict):
    id: int
    invoice: int
    step: int
    state: ReminderState
    proposed_at: str
    decided_at: str | None
    dropped_because: str
    reckoned_on: str | None
    currency: str
    open_amount: str
    interest: str
    fixed_sum: str
    working: str
    today: ClaimShown


class SupplyOrderWordRequest(TypedDict):
    supplier: NotRequired[str]
    lines: list[WantedWordRequest]
    seen: NotRequired[list[SeenItem]]
    mailed_to: NotRequired[str]
    note: NotRequired[str]


class TrimShown(TypedDict):
    id: int
    client_id: str
    visit: int
    cow: int
    number: str
    kind: TrimKind
    mobility_scale: str
    mobility_score: int | None
    belly_band_minutes: int | None
    crush_seconds: int | None
    for_vet: str
    told_vet: str
    note: str
    recorded_at: str
    recorded_by: str
    feet: list[FootShown]
    referrals: list[ReferralShown]


class VisitShown(TypedDict):
    id: int
    uid: str
    farm: int
    reason: VisitReason
    state: VisitState
    asked_by: str | None
    asked_at: str
    note: str | None
    due_from: str
    due_until: str
    mobility_scale: str
    mobility_score: int | None
    head_count: int
    corrective_count: int
    expected_minutes: int
    van: int | None
    planned_start: str | None
    planned_finish: str | None
    hour_told: str | None
    started_at: str | None
    finished_at: str | None
    called_off_at: str | None
    called_off_because: str | None
    washed_down: bool
    hygiene_note: str | None
    signed_by: str | None
    was_done: str | None
    farm_to_do: str | None
    start_checked: bool
    changed_at: str


class WashTold(TypedDict):
    vans: list[NextYardTold]
    unwashed: list[int]


class WatchBoxShown(TypedDict):
    state: WatchState
    farm: str
    asked_at: str | None
    answer_until: str | None


class WatchCallShown(TypedDict):
    number: int
    name: str
    is_trimmer: bool
    at: str
    answer: CallAnswer | Literal[""]
    answered_at: str | None
    messages: list[WatchMessageShown]


class WatchShown(TypedDict):
    id: int
    visit: int | None
    trimmer: int
    trimmer_name: str
    van: int | None
    is_test: bool
    is_by_plan: bool
    is_quiet_place: bool
    state: WatchState
    began_at: str
    expected_finish: str
    next_at: str | None
    well_until: str | None
    asked_at: str | None
    answer_until: str | None
    told_at: str | None
    tellings: int
    taken_at: str | None
    taken_by: str
    last_heard_at: str | None
    ended_at: str | None
    ended_how: WatchEnd | Literal[""]


class WholePlanShown(TypedDict):
    id: int
    monday: str
    state: WeekPlanState
    percent: int
    progress_text: str
    failure: str
    made_by: PlanMaker
    what_changed: str
    follows: int | None
    because: str
    is_replan: bool
    asked_at: str
    asked_by: str
    stop_asked_at: str | None
    finished_at: str | None
    accepted_at: str | None
    cost: PlanCostShown | None
    cost_history: list[CostPointShown]
    shifts: list[PlanShiftShown]
    left_out: list[LeftOutShown]
    reasons: PlanReasonsShown | None


class WholeVisitShown(TypedDict):
    id: int
    uid: str
    farm: int
    reason: VisitReason
    state: VisitState
    asked_by: str | None
    asked_at: str
    note: str | None
    due_from: str
    due_until: str
    mobility_scale: str
    mobility_score: int | None
    head_count: int
    corrective_count: int
    expected_minutes: int
    van: int | None
    planned_start: str | None
    planned_finish: str | None
    hour_told: str | None
    started_at: str | None
    finished_at: str | None
    called_off_at: str | None
    called_off_because: str | None
    washed_down: bool
    hygiene_note: str | None
    signed_by: str | None
    was_done: str | None
    farm_to_do: str | None
    start_checked: bool
    changed_at: str
    events: list[EventShown]
    asked_cows: list[AskedCowShown]
    draft_length: DraftLengthShown | None
    may: list[
        Literal[
            "plan",
            "confirm",
            "tell_hour",
            "put_off",
            "call_off",
            "start",
            "finish",
            "expect_cows",
            "change_draft",
        ]
    ]


class WholeWatchShown(TypedDict):
    id: int
    visit: int | None
    trimmer: int
    trimmer_name: str
    van: int | None
    is_test: bool
    is_by_plan: bool
    is_quiet_place: bool
    state: WatchState
    began_at: str
    expected_finish: str
    next_at: str | None
    well_until: str | None
    asked_at: str | None
    answer_until: str | None
    told_at: str | None
    tellings: int
    taken_at: str | None
    taken_by: str
    last_heard_at: str | None
    ended_at: str | None
    ended_how: WatchEnd | Literal[""]
    events: list[WatchEventShown]
    calls: list[WatchCallShown]
    cautions: list[str]


class WishWordRequest(TypedDict):
    mobility_scale: NotRequired[MobilityScale | None]
    mobility_score: NotRequired[int | None]
    reason: VisitReason
    asked_by: NotRequired[str]
    due_from: str
    due_until: str
    head_count: int
    corrective_count: NotRequired[int]
    note: NotRequired[str]
    cows: NotRequired[list[CowWishWordRequest]]


class AcceptWordRequest(TypedDict):
    accepted: list[AcceptedWordRequest]


class ApprovedTold(TypedDict):
    reminder: ReminderRow
    mails: list[MailShown]


class ChangesShown(TypedDict):
    because: str
    visits: list[ComparedShown]
    kinds: list[str]
    km: SumShown
    hours: SumShown
    money: SumShown
    count: SumShown
    paid: str
    same_list: bool


class ConsumableWordRequest(TypedDict):
    name: str
    kind: ConsumableKind
    size: NotRequired[str]
    unit: Unit
    is_active: NotRequired[bool]
    supplier: NotRequired[str]
    supplier_email: NotRequired[str]
    pack: NotRequired[str]
    price: NotRequired[str | None]
    lead_days: NotRequired[int]
    service_percent: NotRequired[str | None]
    shelf_days: NotRequired[int | None]
    lowest_celsius: NotRequired[str | None]
    grams_per_ml: NotRequired[str | None]
    active_substance: NotRequired[str]
    dilution: NotRequired[str]
    contact_minutes: NotRequired[str | None]
    note: NotRequired[str]
    recipe: NotRequired[list[RecipeWordRequest]]


class CrushBatchShown(TypedDict):
    now: str
    cursor: int
    more: bool
    visit: CrushVisitShown
    answers: list[CrushAnswerShown]
    others: list[CrushOtherShown]


class DraftShown(TypedDict):
    id: int
    kind: InvoiceKind
    state: InvoiceState
    number: str
    farm: int
    payer: int | None
    visit: int | None
    corrects: int | None
    issued_on: str | None
    tax_point: str
    due_on: str | None
    period_from: str | None
    period_until: str | None
    currency: str
    net: str
    tax: str
    gross: str
    prepaid: str
    payable: str
    settled: str
    open_amount: str
    is_open: bool
    paid: PaidState | None
    reason: str
    note: str
    order_number: str
    buyer_reference: str
    tax_name: str
    line_sum: str
    allowances: str
    charges: str
    rounding: str
    home_rate: str | None
    creditor_reference: str
    drafted_at: str
    issued_at: str | None
    seller: PartyShown
    buyer: PartyShown
    payment: PaymentWay
    lines: list[LineShown]
    document_amounts: list[WholeShown]
    tax_shares: list[TaxShareShown]
    settled_by: list[AllocationShown]
    credit_notes: list[int]
    no_xml_because: str | None
    edits: list[EditShown]
    left_off: list[LeftOffShown]


class HeardShown(TypedDict):
    watch: WatchBoxShown | None


class HerdListLookedAt(TypedDict):
    id: int
    farm: int
    file_name: str
    uploaded_at: str
    applied_at: str | None
    outcome: dict[str, Any] | None
    new: list[ListedCow]
    changed: list[ListedChange]
    unchanged: int
    refused: list[ListedFault]
    unknown_headings: list[str]


class InvoiceShown(TypedDict):
    id: int
    kind: InvoiceKind
    state: InvoiceState
    number: str
    farm: int
    payer: int | None
    visit: int | None
    corrects: int | None
    issued_on: str | None
    tax_point: str
    due_on: str | None
    period_from: str | None
    period_until: str | None
    currency: str
    net: str
    tax: str
    gross: str
    prepaid: str
    payable: str
    settled: str
    open_amount: str
    is_open: bool
    paid: PaidState | None
    reason: str
    note: str
    order_number: str
    buyer_reference: str
    tax_name: str
    line_sum: str
    allowances: str
    charges: str
    rounding: str
    home_rate: str | None
    creditor_reference: str
    drafted_at: str
    issued_at: str | None
    seller: PartyShown
    buyer: PartyShown
    payment: PaymentWay
    lines: list[LineShown]
    document_amounts: list[WholeShown]
    tax_shares: list[TaxShareShown]
    settled_by: list[AllocationShown]
    credit_notes: list[int]
    no_xml_because: str | None


class MatchShown(TypedDict):
    id: int
    file: int
    booked_on: str
    currency: str
    amount: str
    charges: str
    party_name: str
    party_account: str
    reference: str
    text: str
    is_reversal: bool
    set_aside_at: str | None
    set_aside_because: str
    proposals: list[ProposalShown]


class OrderListTold(TypedDict):
    items: list[OrderRowTold]
    seen: list[int]


class PatchedConsumableWordRequest(TypedDict):
    name: NotRequired[str]
    kind: NotRequired[ConsumableKind]
    size: NotRequired[str]
    unit: NotRequired[Unit]
    is_active: NotRequired[bool]
    supplier: NotRequired[str]
    supplier_email: NotRequired[str]
    pack: NotRequired[str]
    price: NotRequired[str | None]
    lead_days: NotRequired[int]
    service_percent: NotRequired[str | None]
    shelf_days: NotRequired[int | None]
    lowest_celsius: NotRequired[str | None]
    grams_per_ml: NotRequired[str | None]
    active_substance: NotRequired[str]
    dilution: NotRequired[str]
    contact_minutes: NotRequired[str | None]
    note: NotRequired[str]
    recipe: NotRequired[list[RecipeWordRequest]]
