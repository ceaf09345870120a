"""Every form of every page: it writes nothing over that its reader did not see, and takes no row of another business.

A page that was opened before somebody else changed the row says so, keeps what was typed, and changes nothing: a new
form of a row stands in tests/walls/change_forms.py, or says why not. Fields that hold keys are found on the pages; a
new one says in tests/walls/key_fields.py which rows its keys are of.
"""

import html
import logging
from datetime import date

import pytest
from django import forms
from django.db.models import QuerySet
from django.urls import reverse

from invoicing.models import PriceList
from tests.walls.change_forms import CHANGES, NO_ROW_SEEN
from tests.walls.key_fields import OTHERS, ROWS, foreign_keys, is_refused, key_fields, plain, posted
from tests.walls.routes import PAGES, every_pattern
from trimops.accounts.roles import Role
from trimops.web.seen_form import SEEN, SeenForm

OURS = ("trimops", "farms", "visits", "invoicing")


@pytest.fixture(autouse=True)
def _quiet(caplog):
    """Refusals are expected here; only what breaks is to be read."""
    caplog.set_level(logging.CRITICAL, logger="django.request")


def kinds_below(kind):
    for each in kind.__subclasses__():
        yield each
        yield from kinds_below(each)


def forms_of_ours():
    assert list(every_pattern()), "every page is loaded"
    return {
        kind
        for kind in kinds_below(forms.BaseForm)
        if kind.__module__.partition(".")[0] in OURS and "look_sample" not in kind.__module__
    }


def made_alone(kinds):
    """Without those that are only mixed into others."""
    return {kind for kind in kinds if not issubclass(kind, SeenForm) or SeenForm in kind.__mro__[1:]}


def test_every_form_knows_what_its_reader_saw_or_says_why_not():
    ours = made_alone(forms_of_ours())
    unsaid = {kind for kind in ours if not issubclass(kind, SeenForm) and kind.__name__ not in NO_ROW_SEEN}
    assert not {kind for kind in unsaid if ".second_step" not in kind.__module__}
    named = {kind.__name__ for kind in ours if not issubclass(kind, SeenForm)}
    assert not NO_ROW_SEEN.keys() - named, "they are gone, or know it by now"


@pytest.fixture
def page(mine, signed_in):
    """The browser of the owner, and the address of a page by its name."""
    browser = signed_in(mine.house.memberships[Role.OWNER].user)
    # because: the list that a bill was made by stays as it is
    later = PriceList.objects.create(business=mine.house.business, name="Later", valid_from=date(2027, 1, 1))

    def at(route):
        return browser, reverse(route, kwargs=PAGES[route].parts({**mine.keys, "price_list": later.pk}))

    return at


def form_on(browser, address):
    return browser.get(address).context["form"]


def sent_of(form):
    """What a browser sends of the form as it is shown."""
    told = {}
    for bound in form:
        value = bound.value()
        if value is None or value is False or isinstance(bound.field, forms.FileField):
            continue
        shown = bound.field.widget.format_value(value)
        told[bound.html_name] = "on" if value is True else shown if shown is not None else ""
    return told


@pytest.fixture
def held(monkeypatch):
    """Send a form: the answer, and of which tables rows were held when the form was looked at. Only what is held stays
    as it is between the look and the writing.
    """
    locked, told = [], []
    lock, look = QuerySet.select_for_update, SeenForm.clean

    def noted(rows, *args, **kwargs):
        locked.append(rows.model._meta.label)
        return lock(rows, *args, **kwargs)

    def looked(form):
        told.append(list(locked))
        return look(form)

    monkeypatch.setattr(QuerySet, "select_for_update", noted)
    monkeypatch.setattr(SeenForm, "clean", looked)

    def send(browser, address, sent):
        locked.clear()
        answer = browser.post(address, sent)
        return answer, told[-1]

    return send


def test_every_form_of_a_row_is_tried(page):
    tried = {type(form_on(*page(route))) for route in CHANGES}
    assert tried == {kind for kind in forms_of_ours() if SeenForm in kind.__mro__[1:]}


@pytest.mark.parametrize("route", CHANGES)
def test_what_somebody_else_changed_meanwhile_is_not_written_over_unseen(route, page, held):
    change, (browser, address) = CHANGES[route], page(route)
    opened = {**sent_of(form_on(browser, address)), **change.more}
    assert opened[SEEN], "the page hands back which row it showed"
    assert browser.post(address, {**opened, change.name: change.theirs}).status_code == 302
    kept = sent_of(form_on(browser, address))
    assert kept != opened
    answer, rows = held(browser, address, {**opened, change.name: change.mine})
    assert answer.status_code == 409
    assert rows, "it is held before it is looked at"
    words, form = html.unescape(answer.content.decode()), answer.context["form"]
    assert "Somebody changed this while you had it open. Different from what it says now" in words
    assert form[change.name].value() == change.mine
    assert isinstance(change.mine, list) or change.mine in words, "what was typed stands there"
    assert sent_of(form_on(browser, address)) == kept, "and nothing was changed"
    again = {**opened, change.name: change.mine, SEEN: form[SEEN].value()}
    assert f'name="{SEEN}" value="{again[SEEN]}"' in words
    assert browser.post(address, again).status_code == 302
    assert sent_of(form_on(browser, address))[change.name] != kept[change.name]


@pytest.mark.parametrize("role", [Role.OWNER, Role.FARM])
def test_no_field_of_any_form_takes_a_key_of_another_business(role, mine, theirs, signed_in):
    browser = signed_in(mine.house.memberships[role].user)
    fields = list(key_fields(mine, browser, role))
    known = ROWS.keys() | OTHERS
    unnamed = {f"{target} {name}" for target, _, name, _ in fields if plain(name) not in known}
    assert not unnamed, "say in key_fields.py which rows these keys are of, or what else they are"
    faults = []
    for target, sent, name, key in fields:
        if is_refused(*posted(browser, target, {**sent, name: key}), name):
            faults.append(f"{target}: {name} refuses {key}, which it offers: nothing is proven")
        for foreign in foreign_keys(name, key, theirs):
            answer, written = posted(browser, target, {**sent, name: foreign})
            if not is_refused(answer, written, name):
                faults.append(f"{target}: {name}={foreign} was answered {answer.status_code}, {written}")
    assert not faults
    assert len(fields) >= {Role.OWNER: 20, Role.FARM: 4}[role]
