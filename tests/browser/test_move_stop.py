"""A stop of the week is moved: by keys, by mouse, by finger; its price is read before it is dropped."""

from datetime import UTC, datetime

import pytest
from playwright.sync_api import Locator, expect

from tests.browser.conftest import Site
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan
from visits.selectors.plan_in_force import plan_in_force
from visits.services.ask_week_plan import ask_week_plan
from visits.services.think_week_plan import think_week_plan

pytestmark = pytest.mark.xdist_group("browser")
DESK = pytest.mark.parametrize("site", ["desk"], indirect=True)
MOVED = "Thistle Bank"


@pytest.fixture
def week(site: Site) -> WeekPlan:
    """Next week, planned, its page open."""
    now = datetime.now(UTC)
    monday = site.round.wanted.due_from
    plan = ask_week_plan(business=site.house.business, monday=monday, at=now, by=site.house.owner)
    plan = think_week_plan(week_plan=plan, limits=SolveLimits(iterations=10), at=now)
    site.be(site.house.trimmer)
    site.open(f"/week/?week={monday}")
    return plan


def newest(site: Site, week: WeekPlan) -> WeekPlan:
    plan = plan_in_force(site.house.scope, week.monday)
    assert plan is not None
    return plan


def stop_on_board(site: Site, name: str = MOVED) -> Locator:
    return site.page.locator(".week-board [data-stop]").filter(has_text=name).first


def price(site: Site) -> Locator:
    return site.page.locator("[data-price]")


def lane_that_can(site: Site) -> Locator:
    """A day of the board that lights up because it can take the stop, other than its own."""
    lanes = site.page.locator(".week-board .can-take")
    return lanes.filter(has_not=stop_on_board(site)).first


def settle(site: Site, week: WeekPlan) -> WeekPlan:
    """The page after the drop, and the plan that it shows."""
    expect(site.page.get_by_role("status").first).to_contain_text(f"{MOVED} moved")
    plan = newest(site, week)
    assert (plan.made_by, plan.follows_id) == ("hand", week.pk)
    return plan


@DESK
def test_by_keys_a_stop_is_picked_up_priced_and_dropped(site: Site, week: WeekPlan) -> None:
    stop = stop_on_board(site)
    stop.focus()
    site.page.keyboard.press("m")
    expect(price(site)).to_contain_text("where it is now")
    here = site.page.locator("[data-price-where]").inner_text()
    for key in ("ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "c"):
        site.page.keyboard.press(key)
    assert site.page.locator("[data-price-where]").inner_text() != here
    expect(price(site)).to_contain_text("more")
    where = site.page.locator("[data-price-where]").inner_text()
    site.page.keyboard.press("Enter")

    plan = settle(site, week)
    assert plan.what_changed.startswith(f"{MOVED} moved: {where.split(',')[0]}")


@DESK
def test_escape_puts_it_back_and_nothing_is_changed(site: Site, week: WeekPlan) -> None:
    stop_on_board(site).focus()
    site.page.keyboard.press("m")
    expect(price(site)).to_contain_text("where it is now")
    site.page.keyboard.press("ArrowDown")
    site.page.keyboard.press("Escape")

    expect(price(site)).to_be_hidden()
    assert newest(site, week) == week


@DESK
def test_by_mouse_a_stop_is_dragged_to_another_day(site: Site, week: WeekPlan) -> None:
    box = stop_on_board(site).bounding_box()
    assert box is not None
    mouse = site.page.mouse
    mouse.move(box["x"] + 20, box["y"] + 10)
    mouse.down()
    mouse.move(box["x"] + 40, box["y"] + 30, steps=4)
    lane = lane_that_can(site)
    expect(lane).to_be_visible()
    shift = lane.get_attribute("data-lane")
    target = lane.bounding_box()
    assert target is not None
    for part in (0.02, 0.3, 0.6, 0.98):
        mouse.move(target["x"] + target["width"] * part, target["y"] + target["height"] / 2, steps=4)
        if price(site).get_attribute("data-kind") == "yes":
            break
    expect(price(site)).to_contain_text("more")
    mouse.up()

    plan = settle(site, week)
    assert plan.what_changed != ""
    assert any(s["id"] == shift for s in plan.plan["shifts"])


@DESK
def test_a_place_against_a_rule_says_why_and_takes_nothing(site: Site, week: WeekPlan) -> None:
    """A visit that must be planned is not dropped among those left out."""
    # Its farm may have a re-check in the same week, which may be left out.
    box = site.page.locator(f'.week-board [data-stop="{site.round.wanted.pk}"]').bounding_box()
    out = site.page.locator("[data-out]")
    assert box is not None
    mouse = site.page.mouse
    mouse.move(box["x"] + 20, box["y"] + 10)
    mouse.down()
    mouse.move(box["x"] + 40, box["y"] + 30, steps=4)
    out.evaluate("element => element.scrollIntoView({block: 'center'})")
    target = out.bounding_box()
    assert target is not None
    mouse.move(target["x"] + 60, target["y"] + target["height"] / 2, steps=5)
    expect(price(site)).to_contain_text("must be planned")
    mouse.up()

    expect(price(site)).to_contain_text("It stays where it was")
    assert newest(site, week) == week


def test_by_finger_a_stop_is_dragged_onto_a_day_of_the_strip(site: Site, week: WeekPlan) -> None:
    day = next(s["id"][-10:] for s in week.plan["shifts"])
    grip = site.page.locator(".week-day [data-grip]").first
    name = grip.locator(".unseen").inner_text()
    grip.evaluate("element => element.scrollIntoView({block: 'center'})")
    finger = Finger(site)
    finger.down(grip)
    finger.move(0, 30)
    door = site.page.locator(".week-strip .can-take").filter(has_not=site.page.locator("[aria-current]")).last
    expect(door).to_be_visible()
    assert door.get_attribute("data-door") != day
    finger.move_to(door)
    expect(price(site)).to_contain_text("more")
    finger.up()

    expect(site.page.get_by_role("status").first).to_contain_text(f"{name} moved")
    assert newest(site, week).follows_id == week.pk


class Finger:
    """One finger on the screen, by the browser's own touch events."""

    def __init__(self, site: Site) -> None:
        self.wire = site.page.context.new_cdp_session(site.page)
        self.wire.send("Emulation.setTouchEmulationEnabled", {"enabled": True})
        self.x = self.y = 0.0

    def down(self, on: Locator) -> None:
        self.x, self.y = self._middle(on)
        self._send("touchStart")

    def move(self, right: float, down: float) -> None:
        for _ in range(5):
            self.x, self.y = self.x + right / 5, self.y + down / 5
            self._send("touchMove")

    def move_to(self, to: Locator) -> None:
        x, y = self._middle(to)
        self.move(x - self.x, y - self.y)

    def up(self) -> None:
        self.wire.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})

    def _send(self, kind: str) -> None:
        points = [{"x": self.x, "y": self.y}]
        self.wire.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    def _middle(self, of: Locator) -> tuple[float, float]:
        box = of.bounding_box()
        assert box is not None
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
