"""The page on which people try the API: drawn by a library, held to what our own pages are held to."""

import json

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from tests.browser.conftest import DESK, PHONE, Site

pytestmark = pytest.mark.xdist_group("browser")
AXE = Axe()
# because: the library draws a `main` within ours, which we call a group; HTML lets it be called nothing else, and two
# main parts on one page would be worse for whoever goes from part to part by keys
LEFT_OUT = ["aria-allowed-role"]
LOOK = """async (leftOut) => {
  const rules = Object.fromEntries(leftOut.map((id) => [id, { enabled: false }]));
  const found = await axe.run({ resultTypes: ["violations"], rules });
  const { scrollWidth, clientWidth } = document.documentElement;
  const told = found.violations.map((broken) => `${broken.id}: ${broken.nodes[0].html.slice(0, 120)}`);
  return scrollWidth > clientWidth ? [...told, `${scrollWidth - clientWidth} px wider than the screen`] : told;
}"""


def test_it_can_be_read_by_everybody_and_fits_the_screen(door: Site) -> None:
    """With an operation open that has parameters and a body, as it is shown and as it is filled in."""
    door.be(door.house.owner)
    page = door.page
    page.add_init_script(script=AXE.axe_script)
    assert door.open("/api/try/") == 200
    page.locator("#operations-tag-farms").click()
    operation = page.locator("#operations-farms-add_farm")
    operation.locator(".opblock-summary-control").click()
    operation.locator(".body-param__example").wait_for()
    assert "Lower Meadow Farm" in operation.locator(".body-param__example").inner_text()
    faults = [("to be read", size["width"], page.evaluate(LOOK, LEFT_OUT)) for size in _sizes(door)]
    operation.locator(".try-out__btn").click()
    operation.locator("textarea").wait_for()
    faults += [("to be filled in", size["width"], page.evaluate(LOOK, LEFT_OUT)) for size in _sizes(door)]
    assert [fault for fault in faults if fault[2]] == []
    shown = json.loads(operation.locator("textarea").input_value())
    # No key is typed, and the second is another call.
    for name in ("Far End", "Near End"):
        operation.locator("textarea").fill(json.dumps(shown | {"name": name}))
        operation.get_by_role("button", name="Execute").click()
        told = operation.locator(".live-responses-table")
        expect(told.locator(".response-col_description").last).to_contain_text(name)
        expect(told.locator(".response-col_status").last).to_contain_text("201")


def _sizes(site: Site):
    for size in (DESK, PHONE):
        site.page.set_viewport_size(size)
        yield size
