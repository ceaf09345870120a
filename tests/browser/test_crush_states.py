"""Every state of the crush page: readable by everybody, as wide as the phone, large enough for gloves, and pictured.

With TRIMOPS_PICTURES=1 (as in `make bench`) pictures lie in test-output/crush/ (git ignores it): 360 x 640 and
820 x 1180, light and outdoor. Open them.
"""

import os
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.conf import settings
from playwright.sync_api import Page

from tests.browser.crush_looks import no_room_for_a_thumb, too_pale, too_small, wider_than_the_screen
from tests.browser.crush_phone import ONE_HAND, Phone, Server
from tests.browser.crush_states import Walk
from tests.browser.crush_yard import make_yard, small_visit

pytestmark = pytest.mark.xdist_group("browser")
PICTURES = Path(settings.BASE_DIR) / "test-output" / "crush"
WITH_PICTURES = os.environ.get("TRIMOPS_PICTURES") == "1"
TABLET = {"width": 820, "height": 1180}
AXE = Axe()
RUN = (
    "axe.run({resultTypes: ['violations']})"
    ".then(found => found.violations.map(broken => [broken.id, broken.nodes[0].html]))"
)
# What the list of states must have in it, so that no state falls out of it unseen.
AT_LEAST = {
    *("begin", "queue full", "queue with some done", "queue without signal", "queue signed out"),
    *("keypad", "keypad narrowed", "keypad unknown", "cow", "cow new", "cow late in calf"),
    *("cow with history and a block", "cow refused", "foot", "foot asked Sure?", "foot refused"),
    *(
        "sheet lesions",
        "sheet offers",
        "sheet stages",
        "cows",
        "kit",
        "knives one out of use",
        "wash",
        "farm",
        "phone",
        "days",
    ),
    *("sign-off", "sign-off done", "told refused", "told two phones", "queue with a newer version"),
    *("queue empty", "queue all done"),
}


@pytest.fixture
def walk(transactional_db, browser, tmp_path):
    yard = make_yard()
    small = small_visit(yard)
    with Server(tmp_path / "server") as server, Phone(browser, tmp_path / "phone", server) as phone:
        phone.be(yard.house.trimmer)
        yield Walk(phone, server, yard, small)
        phone.page.screenshot(path=tmp_path / "last.png")


def test_every_state_can_be_read_hit_and_seen_by_a_gloved_hand_in_the_sun(walk):
    faults: list[str] = []
    names = []
    for name in walk.states():
        names.append(name)
        if WITH_PICTURES:
            _picture(walk.page, f"{len(names):02d}-{name}")
        faults += [f"{name}: {fault}" for fault in _faults(walk.page)]

    assert faults == [], "\n".join(faults)
    assert walk.phone.complaints == []
    assert set(names) >= AT_LEAST, "no state is forgotten"


def _faults(page: Page) -> list[str]:
    page.mouse.move(0, 0)
    found = [f"{rule}, {culprit[:160]}" for rule, culprit in _violations(page)]
    if (wider := wider_than_the_screen(page)) > 0:
        found.append(f"{wider} px wider than the screen")
    found += too_small(page)
    if page.locator("[data-place]").count() and not page.locator(".sheet, .asked-box").count():
        found += no_room_for_a_thumb(page)
    _wear(page, "outdoor")
    found += [f"outdoor, {fault}" for fault in too_pale(page)]
    _wear(page, "light")
    return found


def _violations(page: Page) -> list[tuple[str, str]]:
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE.axe_script)
    found: list[tuple[str, str]] = page.evaluate(RUN)
    return found


def _picture(page: Page, name: str) -> None:
    PICTURES.mkdir(parents=True, exist_ok=True)
    page.screenshot(path=PICTURES / f"{name}-phone.png")
    _wear(page, "outdoor")
    page.screenshot(path=PICTURES / f"{name}-phone-outdoor.png")
    page.set_viewport_size(TABLET)
    page.screenshot(path=PICTURES / f"{name}-tablet-outdoor.png")
    _wear(page, "light")
    page.screenshot(path=PICTURES / f"{name}-tablet.png")
    page.set_viewport_size(ONE_HAND)


def _wear(page: Page, theme: str) -> None:
    page.evaluate("(theme) => { document.documentElement.dataset.theme = theme; }", theme)


BAD = """<body style="margin:0"><button style="width:30px;height:30px;color:#888;background:#aaa">Tiny</button>
<p style="width:500px">wide</p><svg width="100" height="40"><g data-place="skin 0"><rect width="100" height="40"></rect>
<text x="50" y="27">0</text></g></svg></body>"""


def test_what_a_gloved_hand_would_miss_is_found(browser):
    page = browser.new_page(viewport=ONE_HAND)
    page.set_content(BAD)

    assert too_small(page) == ["Tiny: 30 high, not 56", "Tiny: 30 wide"]
    assert too_pale(page) == ["Tiny: 1.5 to 1"]
    assert no_room_for_a_thumb(page) == ["skin 0: 10 of 25 points miss it"]
    assert wider_than_the_screen(page) > 0
    page.close()
