"""The rows of the furnished business that an example of the description stands for."""

import json
import re
from datetime import timedelta
from functools import cache
from typing import Any

from django.urls import resolve
from django.utils import timezone

from invoicing.models import Invoice
from tests.walls.furnished import Furnished
from tests.walls.routes import API
from trimops.api.description import kept_description
from trimops.api.told_besides import kept_examples
from visits.models import StockPlace

# A field of a body is a row by this word of tests/walls/furnished.py.
WORDS = {
    "farm": "farm",
    "cow": "cow",
    "van": "van",
    "payer": "payer",
    "payment": "payment",
    "entry": "bank_entry",
    "tax_rate": "tax_rate",
    "consumable": "consumable",
    "blade": "blade",
    "invoice": "issued",
    "visit": "planned",
    "drafts": "invoice",
    "agreed": "planned",
    "seen": "supply_line",
    "to_place": "stock_place",
    "from_place": "store",
    "place": "store",
    "line": "supply_line",
    "trimmer": "trimmer",
}
# Where another row of the house shows more of it.
OF_OPERATION = {
    "draft_credit_note": {"line": "issued_line"},
}
# What makes sense of days to come alone, told as days from now.
SOON = {
    "note_van_out": {"since": 1, "until": 2},
    "type_weather": {"day": 1},
    "replan_lame": {"due_until": 2},
}


BY_THE_FARM = {"ask_erasure"}
# What the furnished business is not in the state for; its clock stands in March, the program's does not.
STOPPED = {
    "ask_erasure": "erasure_asked_already",
    "change_price_list": "prices_billed_on",
    "draft_late_work": "bill_fits",
    "hold_offer": "offer_is_gone",
    "match_bank_entry_paid_back": "entry_is_done",
    "move_stop": "stop_cannot_go",
    "pay_back_credit_note": "cannot_pay_back",
    "replan_ill": "happening_makes_no_sense",
    "replan_late": "cannot_be_meant",
    "send_farm_statement": "no_address",
    "set_off_credit_note": "cannot_set_off",
    "take_held_hour": "hour_is_not_held",
}


def example_call(name: str, furnished: Furnished) -> tuple[str, str, Any]:
    """Method, address and body of that operation's example, with ids that are there."""
    method, path = _where()[name]
    keys = furnished.keys | _more(furnished)
    own = OF_OPERATION.get(name, {})
    route = API[resolve(re.sub(r"\{\w+\}", "1", path)).url_name]
    parts = route.parts({**keys, **{row: keys[other] for row, other in own.items() if row in keys}})
    address = re.sub(r"\{(\w+)\}", lambda found: str(parts["pk" if found[1] == "id" else found[1]]), path)
    said = _put_in(
        kept_examples()[name], {word: keys[row] for word, row in (WORDS | own).items() if row in keys}
    )
    soon = {field: _days_on(said[field], days) for field, days in SOON.get(name, {}).items()}
    return method.upper(), address, said | soon


def example_bodies(furnished: Furnished) -> dict[str, Any]:
    """The body of each operation that has an example."""
    return {name: example_call(name, furnished)[2] for name in kept_examples()}


@cache
def _where() -> dict[str, tuple[str, str]]:
    """Method and path of each operation."""
    paths = json.loads(kept_description())["paths"]
    return {op["operationId"]: (m, path) for path, each in paths.items() for m, op in each.items()}


def _put_in(said: Any, rows: dict[str, Any], word: str = "") -> Any:
    if isinstance(said, dict):
        return {name: _put_in(each, rows, name) for name, each in said.items()}
    if isinstance(said, list):
        return [_put_in(each, rows, word) for each in said]
    is_key = isinstance(said, int) and not isinstance(said, bool) and word in rows
    return rows[word] if is_key else said


def _days_on(said: str, days: int) -> str:
    """A day or a moment so many days from now, written as the one that it stands for."""
    moment = timezone.now() + timedelta(days=days)
    return moment.isoformat() if "T" in said else moment.date().isoformat()


def _more(furnished: Furnished) -> dict[str, Any]:
    scope = furnished.house.scope
    issued = Invoice.objects.within(scope).get(pk=furnished.keys["issued"])
    return {
        "store": StockPlace.objects.within(scope).get(van=None).pk,
        "trimmer": furnished.house.trimmer.pk,
        "issued_line": issued.lines.within(scope).filter(unit_price__gt=0)[0].pk,
    }
