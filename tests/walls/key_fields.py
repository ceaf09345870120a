"""The fields that a page itself fills with keys of rows (hidden, listed, ticked, pressed), found on furnished pages.

Keys that are typed, or that no furnished page offers, are in test_every_route.py.
"""

import re
from urllib.parse import urljoin

from django.db import connection, transaction
from django.test.utils import CaptureQueriesContext
from django.urls import resolve, reverse

from farms.models import Contact, Farm, Payer
from invoicing.models import Reminder, TaxRate
from tests.walls.page_forms import page_forms
from tests.walls.routes import PAGES
from trimops.accounts.models import Membership
from trimops.accounts.roles import STAFF
from visits.models import Consumable, StockPlace, Van

KEY = re.compile(r"(?:[a-z]+-)?[0-9]+")
ROWS = {
    "farm_of_page": Farm,
    "item": Consumable,
    "leaves": Contact,
    "payer": Payer,
    "place": StockPlace,
    "reminder": Reminder,
    "tax": TaxRate,
    "van": Van,
}
"""Of which rows the keys are that stand in a field of this name; `item_3` is an `item`."""
OTHERS = {"shows", "trimmer"}
"""Named in some other way: see `foreign_keys`."""
NO_KEYS = {
    "hygiene_level": "a level",
    "weekdays": "days",
    "usual_weekdays": "days",
    "alarm_minutes": "minutes",
    "month": "a month",
    "lasts": "days",
    "look": "a button",
    "farm_client.leaves": "a button of the row in the address",
    "bank_read": "columns of the file in the address",
}
LEFT_OUT = {"reminder": "of those ticked, what is not there is left out"}
WRITES = ("INSERT", "UPDATE", "DELETE")


def shown_pages(mine, role):
    """The addresses of the pages that this part may look at, the farm client's where staff have none."""
    for name, route in PAGES.items():
        is_mine = role in route.roles and (role in STAFF or not route.roles & STAFF)
        if is_mine and route.answer == 200:
            yield reverse(name, kwargs=route.parts(mine.keys))


def plain(name):
    """`item_3` is an `item`: the lines of one form are tried once."""
    return re.sub(r"_[0-9]+$", "", name)


def key_fields(mine, browser, role):
    """(address, what is sent, name of the field, a key that stands in it) once for each field of each address."""
    found = {}
    for address in shown_pages(mine, role):
        page = browser.get(address)
        if not page.get("Content-Type", "").startswith("text/html"):
            continue
        for form in page_forms(page.content.decode()):
            target = urljoin(address, form.action)
            route = resolve(target.partition("?")[0]).url_name
            for choice in form.choices.values():
                keys = [value for value in choice.values if KEY.fullmatch(value)]
                is_known = choice.name in NO_KEYS or route in NO_KEYS or f"{route}.{choice.name}" in NO_KEYS
                if keys and not is_known and choice.name != "seen":
                    found.setdefault((route, plain(choice.name)), (target, form.sent(), choice.name, keys[0]))
    return found.values()


def foreign_keys(name, key, theirs):
    kind, dash, _ = key.rpartition("-")
    if name == "trimmer":
        return [theirs.house.trimmer.pk]
    if name == "shows":
        members = Membership.objects.filter(business=theirs.house.business)
        keys = {"trimmer": members.values_list("pk", flat=True), "van": [theirs.house.van.pk]}
        return [f"{kind}{dash}{each}" for each in keys.get(kind, [theirs.house.farm.pk])]
    model = ROWS[plain(name)]
    return list(model.objects.within(theirs.house.scope).values_list("pk", flat=True).order_by("pk"))[-1:]


def posted(browser, target, sent):
    """What is answered, and what was written for it; it is taken back."""
    with transaction.atomic(), CaptureQueriesContext(connection) as asked:
        answer = browser.post(target, sent)
        transaction.set_rollback(True)
    told = [query["sql"] for query in asked if query["sql"].startswith(WRITES)]
    return answer, [sql for sql in told if "django_session" not in sql]


def is_refused(answer, written, name):
    """At the field itself, or as a row that is not there; a page of another farm, by the rule that says so."""
    if name in LEFT_OUT:
        return not written
    if name == "farm_of_page" and answer.status_code == 409:
        return not written
    form = answer.context.get("form") if answer.context else None
    if form is not None and name in form.fields:
        return answer.status_code == 400 and name in form.errors and not written
    return answer.status_code == 404 and not written
