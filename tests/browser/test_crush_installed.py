"""The crush page as an app of the phone: it can be installed, its worker holds the page, the screen stays awake."""

import pytest
from playwright.sync_api import Request, expect

from tests.browser.crush_hand import Hand
from tests.browser.crush_phone import Phone, Server
from tests.browser.crush_photos import camera
from tests.browser.crush_plans import for_the_vet
from tests.browser.crush_yard import begun, make_yard

pytestmark = pytest.mark.xdist_group("browser")
ASKED_AWAKE = """() => {
  window.awakeAsked = [];
  const ask = navigator.wakeLock.request.bind(navigator.wakeLock);
  navigator.wakeLock.request = (kind) => { window.awakeAsked.push(kind); return ask(kind); };
}"""


@pytest.fixture
def yard(transactional_db):
    return begun(make_yard())


@pytest.fixture
def server(yard, tmp_path):
    with Server(tmp_path / "server") as server:
        yield server


@pytest.fixture
def phone(yard, server, browser, tmp_path):
    with Phone(browser, tmp_path / "phone", server) as phone:
        phone.be(yard.house.trimmer)
        yield phone


def test_the_page_can_be_put_among_the_phone_s_apps_and_its_worker_holds_it(yard, phone):
    phone.open(yard.path)
    phone.wait_until_kept()
    chromium = phone.context.new_cdp_session(phone.page)

    manifest = chromium.send("Page.getAppManifest")
    assert manifest["errors"] == []
    assert chromium.send("Page.getInstallabilityErrors")["installabilityErrors"] == []
    assert manifest["url"].endswith("/visits/crush.webmanifest")
    scope = phone.page.evaluate("navigator.serviceWorker.ready.then((place) => place.scope)")
    assert scope.endswith("/visits/")
    assert phone.page.evaluate("navigator.serviceWorker.controller.state") == "activated"


def test_the_screen_is_asked_to_stay_awake(yard, phone):
    phone.page.add_init_script(f"({ASKED_AWAKE})()")
    phone.open(yard.path)

    phone.page.wait_for_function("() => window.awakeAsked.length > 0")

    assert phone.page.evaluate("window.awakeAsked") == ["screen"]


def test_a_day_on_the_page_asks_nobody_but_us(yard, server, phone):
    asked: list[str] = []
    phone.context.on("request", lambda request: asked.append(_where(request)))
    phone.open(yard.path)
    phone.wait_until_kept()
    hand = Hand(phone.page, camera(1))
    hand.put_down(for_the_vet("240").with_foot(photos=1))
    for face in ("cows", "farm", "kit", "wash", "sign-off", "phone", "told", "number"):
        phone.page.goto(f"{server.address}{yard.path}#/{face}")
        expect(phone.page.locator(f".face-{face}")).to_be_visible()
    expect(phone.page.locator(".line-sent")).to_contain_text("All sent")

    assert {
        where for where in asked if not where.startswith((server.address, "blob:" + server.address))
    } == set()
    assert any("/writings/" in where for where in asked)
    assert any("/photos/" in where for where in asked)


def _where(request: Request) -> str:
    return request.url
