"""A day of a business, as calls: what each person and program of it asks, in their order.

Derived from a trimmer's day (no source, our own reckoning): forty cows at one farm, sent from the crush four at a time
with a photo after every third sending; the office looks at the diary, bills the visit and reads the papers; the farm
looks at its own pages; two phones ask for the calendar; a program reads the lists.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from urllib.parse import urlencode
from uuid import uuid4

from tests.bench.load.built_houses import LoadHouse
from tests.visits.api.phone import BLOCK, CUT, ULCER, cow_content, foot
from trimops.accounts.roles import Role

AT_ONCE, PHOTO_EACH, FEED_CALLS, LIST_ROUNDS = 4, 3, 12, 3
CSRF = "c" * 32
LISTS = (
    *("farms/", "cows/?limit=100", "visits/", "invoices/", "payments/"),
    *("rechecks/", "blocks/", "kit/consumables/", "vans/"),
)


@dataclass(frozen=True)
class Call:
    """One request; `good` are the statuses that are right for it."""

    kind: str
    method: str
    path: str
    headers: Mapping[str, str] = field(default_factory=dict)
    body: bytes = b""
    good: tuple[int, ...] = (200,)


@dataclass(frozen=True)
class Answer:
    status: int
    headers: Mapping[str, str]
    body: bytes


@dataclass(frozen=True)
class Step:
    """`ask` makes the call when its turn has come; `hear` keeps what later ones need of the answer."""

    ask: Callable[[], Call]
    hear: Callable[[Answer], None] | None = None


Person = list[Step]


def day_of(house: LoadHouse, picture: bytes) -> list[Person]:
    """Everybody of the business, each with what they do in turn."""
    return [
        [*at_the_crush(house, picture), *after_the_visit(house)],
        diary_of_the_office(house),
        farm_client(house),
        *[calendar(house) for _ in range(2)],
        program(house),
    ]


def at_the_crush(house: LoadHouse, picture: bytes) -> Person:
    by, visit = Role.TRIMMER, house.today
    steps = [
        _page("week page", house, by, "/week/"),
        _page("visit page", house, by, f"/visits/{visit}/"),
        _page("crush page", house, by, f"/visits/{visit}/crush/"),
        _page("crush papers", house, by, "/visits/crush/today.json"),
        _page("crush papers", house, by, f"/visits/{visit}/crush/papers.json"),
        _form("begin and finish", house, by, f"/visits/{visit}/start/", checked="on"),
    ]
    phone = {"uid": str(uuid4()), "seen": 0}
    for first in range(0, len(house.cows), AT_ONCE):
        cows = house.cows[first : first + AT_ONCE]
        steps.append(_sending(house, phone, cows))
        if first // AT_ONCE % PHOTO_EACH == 0:
            steps.append(_photo(house, phone, picture))
            steps.append(_page("crush papers", house, by, "/visits/crush/today.json"))
    told = {"signed_by": "The herd manager", "washed_down": "on", "hygiene_note": "Hosed"}
    steps.append(_form("begin and finish", house, by, f"/visits/{visit}/finish/", **told))
    return steps


def after_the_visit(house: LoadHouse) -> Person:
    visit, office = house.today, Role.OFFICE
    return [
        Step(lambda: _report_issued(house, office, f"/visits/{visit}/report/issue/"), _is_issued),
        _page("report", house, office, f"/visits/{visit}/report/"),
        _page("report", house, Role.TRIMMER, f"/visits/{visit}/report.pdf"),
        _page("money page", house, office, "/invoices/ready/"),
        Step(lambda: _api_post("draft", house, f"visits/{visit}/draft-invoice/"), _keep_draft(house)),
        Step(lambda: _get("money page", house, office, f"/invoices/{house.told['invoice']}/")),
        Step(lambda: _post("issue", house, office, f"/invoices/{house.told['invoice']}/")),
        Step(lambda: _get("invoice paper", house, office, f"/invoices/{house.told['invoice']}/invoice.pdf")),
        _page("money page", house, office, "/invoices/issued/"),
    ]


def diary_of_the_office(house: LoadHouse) -> Person:
    pages = ("/week/", "/visits/", "/farms/", f"/farms/{house.farm}/", "/invoices/", "/kit/", "/week/")
    return [_page("diary and farms", house, Role.OFFICE, page) for page in pages]


def farm_client(house: LoadHouse) -> Person:
    pages = ("", "reports/", f"reports/{house.old}/", "cows/", f"cows/{house.cows[0]}/", "invoices/", "feet/")
    return [_page("farm's pages", house, Role.FARM, f"/my-farm/{page}") for page in pages]


def calendar(house: LoadHouse) -> Person:
    known: dict[str, str] = {}

    def ask() -> Call:
        return Call("calendar feed", "GET", f"/feeds/{house.feed}.ics", dict(known), good=(200, 304))

    def hear(answer: Answer) -> None:
        if tag := answer.headers.get("etag"):
            known["If-None-Match"] = tag

    return [Step(ask, hear)] * FEED_CALLS


def program(house: LoadHouse) -> Person:
    steps: Person = []
    for address in LISTS * LIST_ROUNDS:
        known: dict[str, str] = house.told.setdefault(f"tag {address}", {})  # type: ignore[assignment]

        def ask(address: str = address, known: dict[str, str] = known) -> Call:
            headers = {"Authorization": f"Bearer {house.token}", **known}
            return Call("API list", "GET", f"/api/v1/{address}", headers, good=(200, 304))

        def hear(answer: Answer, known: dict[str, str] = known) -> None:
            if tag := answer.headers.get("etag"):
                known["If-None-Match"] = tag

        steps.append(Step(ask, hear))
    return steps


def _as(house: LoadHouse, role: Role) -> dict[str, str]:
    return {"Cookie": f"sessionid={house.cookies[role]}; csrftoken={CSRF}", "X-CSRFToken": CSRF}


def _get(kind: str, house: LoadHouse, role: Role, path: str) -> Call:
    return Call(kind, "GET", path, _as(house, role))


def _page(kind: str, house: LoadHouse, role: Role, path: str) -> Step:
    return Step(lambda: _get(kind, house, role, path))


def _post(kind: str, house: LoadHouse, role: Role, path: str, **form: str) -> Call:
    headers = {**_as(house, role), "Content-Type": "application/x-www-form-urlencoded"}
    return Call(kind, "POST", path, headers, urlencode(form).encode(), good=(302,))


def _form(kind: str, house: LoadHouse, role: Role, path: str, **form: str) -> Step:
    return Step(lambda: _post(kind, house, role, path, **form))


def _report_issued(house: LoadHouse, role: Role, path: str) -> Call:
    # because: it goes out by itself after the sign-off too, and whoever presses later hears that nothing is new
    return replace(_post("report, issued", house, role, path), good=(302, 409))


def _is_issued(answer: Answer) -> None:
    assert answer.status == 302 or b"says already what is known" in answer.body, answer.body[:300]


def _api_post(kind: str, house: LoadHouse, address: str) -> Call:
    headers = {"Authorization": f"Bearer {house.token}", "Idempotency-Key": str(uuid4())}
    return Call(kind, "POST", f"/api/v1/{address}", headers)


def _keep_draft(house: LoadHouse) -> Callable[[Answer], None]:
    def hear(answer: Answer) -> None:
        house.told["invoice"] = json.loads(answer.body)["invoice"]

    return hear


def _sending(house: LoadHouse, phone: dict[str, object], cows: tuple[int, ...]) -> Step:
    def ask() -> Call:
        now = datetime.now(UTC).isoformat()
        writings = []
        for cow in cows:
            feet = [foot("LH", [ULCER], [CUT, BLOCK])] if cow % 10 == 0 else [foot("LH", (), [CUT])]
            writing = {"uid": str(uuid4()), "kind": "cow", "record": str(uuid4()), "after": None}
            phone["record"] = writing["record"]
            told = {"made_at": now, "not_before": None, "is_gone": False, "content": cow_content(cow, *feet)}
            writings.append({**writing, **told})
        body = {"phone": phone["uid"], "sent_at": now, "seen": phone["seen"], "begun": None}
        headers = {**_as(house, Role.TRIMMER), "Content-Type": "application/json"}
        sent = json.dumps({**body, "writings": writings}).encode()
        return Call("crush writings", "POST", f"/api/v1/visits/{house.today}/crush/writings/", headers, sent)

    def hear(answer: Answer) -> None:
        told = json.loads(answer.body)
        phone["seen"] = told["cursor"]
        assert {each["outcome"] for each in told["answers"]} == {"kept"}, told["answers"]

    return Step(ask, hear)


def _photo(house: LoadHouse, phone: dict[str, object], picture: bytes) -> Step:
    def ask() -> Call:
        taken = datetime.now(UTC).isoformat()
        words = urlencode({"record": phone["record"], "foot": "LH", "taken_at": taken})
        path = f"/api/v1/visits/{house.today}/crush/photos/{uuid4()}/?{words}"
        headers = {**_as(house, Role.TRIMMER), "Content-Type": "image/jpeg"}
        return Call("photo", "PUT", path, headers, picture, good=(200, 201))

    return Step(ask)
