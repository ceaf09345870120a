"""The herd page of a large herd over ten years: how many questions to the database, and how long it takes.

The bar: at most 12 queries for 900 cows and 10 years, the signing-in of the request among them. Times are printed.
"""

import time
from dataclasses import dataclass
from datetime import date
from datetime import time as clock

from tests.bench.embedded_site import embedded_site  # isort: skip
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from tests.bench.visits.large_herd import Wanted, large_herd
from tests.factories import House
from trimops.kernel.clock import at_local
from visits.documents.herd_year import herd_year
from visits.models import Trim, TrimmedFoot
from visits.selectors.herd_facts import herd_facts
from visits.selectors.herd_view import herd_year_story

MOST_QUERIES = 12


@dataclass(frozen=True)
class Measured:
    """What one herd came to; `page_work` is processor time, which other work on the machine does not stretch."""

    trims: int
    feet: int
    queries: int
    facts_seconds: float
    page_seconds: float
    page_work: float
    page_bytes: int


def measure(house: House, today: date) -> Measured:
    """The page as an owner opens it, the second time (the first also loads the program)."""
    client = Client()
    client.force_login(house.owner)
    address = reverse("herd_figures", args=[house.farm.pk])
    client.get(address)
    with CaptureQueriesContext(connection) as asked:
        began, work = time.perf_counter(), time.process_time()
        answer = client.get(address)
        page, work = time.perf_counter() - began, time.process_time() - work
    if answer.status_code != 200:
        raise AssertionError(f"the herd page answered {answer.status_code}")
    began = time.perf_counter()
    herd_facts(house.scope, house.farm, today)
    facts = time.perf_counter() - began
    trims = Trim.objects.within(house.scope).count()
    feet = TrimmedFoot.objects.within(house.scope).count()
    return Measured(trims, feet, len(asked), facts, page, work, len(answer.content))


def main() -> None:
    wanted = Wanted()
    with embedded_site():
        house = large_herd(wanted)
        found = measure(house, wanted.today)
        began = time.perf_counter()
        now = at_local(wanted.today, clock(12), house.business.zone)
        paper = herd_year(herd_year_story(house.scope, house.farm, wanted.today.year, now))
        seconds = time.perf_counter() - began
    print(f"{wanted.cows} cows, {wanted.years} years: {found.trims:,} trims, {found.feet:,} feet")
    print(f"herd page: {found.queries} queries (bar {MOST_QUERIES}), {found.page_seconds:.2f} s,", end=" ")
    print(f"{found.page_work:.2f} s of one core,", end=" ")
    print(f"reading the facts {found.facts_seconds:.2f} s; {found.page_bytes / 1000:.0f} kB")
    print(f"yearly paper: {seconds:.2f} s, {len(paper) / 1000:.0f} kB")
    if found.queries > MOST_QUERIES:
        raise AssertionError(f"{found.queries} queries, at most {MOST_QUERIES} are allowed")
