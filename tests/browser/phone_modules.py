"""The modules of the crush page as Chromium runs them, without the page: called with plain values."""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from django.contrib.staticfiles import finders
from playwright.sync_api import Browser, Page, Route

from tests.browser.conftest import Site

FOLDER = "/static/visits/crush/"
NOWHERE = "http://phone.invalid"
BARE_PAGE = "/account/login/"
CALL = """async ([address, words]) => {
  const it = await import(address);
  const given = JSON.parse(words);
  const answer = (() => { %s })();
  return JSON.stringify(answer ?? null);
}"""


@dataclass(frozen=True)
class Module:
    """One module in a page that has nothing to do with it."""

    page: Page
    address: str

    def run(self, body: str, given: object = None) -> Any:
        """What this JavaScript returns; in it `it` is the module and `given` what the test hands over, both as JSON.

        One long word goes over to the browser far faster than a deep value.
        """
        return json.loads(self.page.evaluate(CALL % body, [self.address, json.dumps(given)]))


def module_of(site: Site, name: str) -> Module:
    """The module as a phone fetches it, under the same security policy as every page of ours."""
    assert site.open(BARE_PAGE) == 200
    return Module(site.page, FOLDER + name)


@contextmanager
def module_alone(browser: Browser, name: str) -> Iterator[Module]:
    """The module with no site behind it, for what touches no database: its files are handed out from where they lie."""
    context = browser.new_context()
    context.route(f"{NOWHERE}/**", _hand_out)
    page = context.new_page()
    page.goto(NOWHERE)
    yield Module(page, f"{NOWHERE}{FOLDER}{name}")
    context.close()


def _hand_out(route: Route) -> None:
    path = route.request.url.removeprefix(NOWHERE).removeprefix("/static/")
    if found := finders.find(path.strip("/")) if path.endswith(".js") else None:
        route.fulfill(path=found, content_type="text/javascript")
    else:
        route.fulfill(body="<!doctype html><title>Blank</title>", content_type="text/html")
