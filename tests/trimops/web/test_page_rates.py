"""How often one person may open pages and do what costs the machine much."""

import ast
from datetime import timedelta
from importlib import import_module

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.architecture.source_tree import ROOT, is_shell, product_files, tree_of
from tests.factories import House, make_house
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.accounts.services.make_token import TokenWish, make_token
from trimops.web.page_rates import SHARES, WORDS, Cost, cost_wait
from visits.models import WeekPlan

pytestmark = pytest.mark.usefixtures("same_window")


@pytest.fixture
def house(db) -> House:
    return make_house()


def signed_in(user):
    client = Client()
    client.force_login(user)
    return client


def test_whoever_asks_for_more_pages_than_a_person_reads_hears_when_to_come_again(house, settings):
    settings.PAGE_RATE = 3
    owner, office = signed_in(house.owner), signed_in(house.office)
    pages = [owner.get(reverse(name)) for name in ("farm_list", "this_week", "farm_list", "this_week")]
    assert [page.status_code for page in pages] == [200, 200, 200, 429]
    refused = pages[-1]
    assert refused["Retry-After"] == "50"
    assert "come again in 1 minute" in refused.content.decode()
    assert office.get(reverse("farm_list")).status_code == 200


def test_what_costs_much_is_counted_for_page_and_api_together(house, settings):
    settings.COSTLY_RATE = 1
    client = signed_in(house.owner)
    # There is nothing to plan (409); that it was asked counts.
    assert client.post(reverse("plan_week", args=["2026-03-02"])).status_code == 409
    before = WeekPlan.objects.within(house.scope).count()
    page = client.post(reverse("plan_week", args=["2026-03-02"]))
    assert (page.status_code, page["Retry-After"]) == (429, "3590")
    assert WORDS[Cost.PLAN] in page.content.decode()
    wish = TokenWish("x", {Action.PLAN_WEEKS}, timedelta(days=9))
    text = make_token(membership=house.memberships[Role.OWNER], wish=wish, at=timezone.now())[1]
    by_program = Client().post(
        "/api/v1/weeks/2026-03-02/plans/",
        headers={"Authorization": f"Bearer {text}", "Idempotency-Key": "a-key-of-ours-0001"},
    )
    assert (by_program.status_code, by_program.json()["code"]) == (429, "too_often")
    assert by_program["Retry-After"] == "3590"
    assert WeekPlan.objects.within(house.scope).count() == before
    assert client.get(reverse("farm_list")).status_code == 200


def test_tables_and_papers_have_measures_of_their_own(house, settings):
    settings.COSTLY_RATE = 1
    client = signed_in(house.owner)
    for address, cost in ((reverse("books_file"), Cost.EXPORT), (statement_of(house), Cost.PAPER)):
        for _ in range(SHARES[cost] - 1):
            assert cost_wait(cost, house.owner.pk) == 0
        assert [client.get(address).status_code for _ in range(2)] == [200, 429]


def statement_of(house):
    return reverse("farm_statement", args=[house.farm.pk])


DEAR = {
    "ask_week_plan": Cost.PLAN, "ask_proof": Cost.PLAN, "replan_week": Cost.PLAN,
    "csv_files": Cost.EXPORT, "csv_handed_over": Cost.EXPORT, "spreadsheet": Cost.EXPORT, "farm_tables": Cost.EXPORT,
    "data_of_farm": Cost.EXPORT, "zip_answer": Cost.EXPORT,
    "hand_over": Cost.EXPORT, "_zipped": Cost.EXPORT,
    "day_sheet": Cost.PAPER, "draft_list": Cost.PAPER, "herd_year": Cost.PAPER, "statement_pdf": Cost.PAPER,
    "reminder_pdf": Cost.PAPER, "invoice_pdf": Cost.PAPER,
}  # fmt: skip
# Opened by a key in a mail, by nobody who is signed in.
BY_KEY = {"ListByLink"}


def dear_views():
    """(view, what it costs) of each view whose own code calls one of `DEAR`."""
    for path in product_files():
        if path.parent.name not in ("web", "api", "plans", "kit", "messages") or not is_shell(path):
            continue
        module = ".".join(path.relative_to(ROOT).with_suffix("").parts)
        for node in tree_of(path).body:
            names = {part.id for part in ast.walk(node) if isinstance(part, ast.Name)} & DEAR.keys()
            if isinstance(node, ast.ClassDef) and names:
                yield getattr(import_module(module), node.name), {DEAR[name] for name in names}


def test_whatever_thinks_takes_tables_out_or_draws_says_what_it_costs():
    seen = [(view.__name__, costs, set(getattr(view, "costs", {}).values())) for view, costs in dear_views()]
    assert [row for row in seen if row[0] not in BY_KEY and row[1] != row[2]] == []
    assert len(seen) > 20
