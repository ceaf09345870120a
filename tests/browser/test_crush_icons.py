"""The committed icons are what Chromium makes of their drawings now."""

from io import BytesIO

import pytest
from PIL import Image, ImageChops, ImageStat
from playwright.sync_api import Browser

from tests.browser.draw_icons import FOLDER, ICONS, paint

pytestmark = pytest.mark.xdist_group("browser")
# Another build of Chromium softens edges a little otherwise; a changed drawing differs by far more.
MOST_DIFFERENCE = 1.0


@pytest.mark.parametrize("name", ICONS)
def test_the_icon_is_the_drawing(name: str, browser: Browser) -> None:
    drawing, size = ICONS[name]
    painted = Image.open(BytesIO(paint(browser, FOLDER / drawing, size))).convert("RGBA")
    kept = Image.open(FOLDER / name).convert("RGBA")
    assert kept.size == (size, size)
    difference = ImageStat.Stat(ImageChops.difference(painted, kept)).mean
    assert max(difference) < MOST_DIFFERENCE


def test_what_matters_of_the_maskable_icon_lies_in_the_circle_that_no_shape_cuts() -> None:
    """W3C Web Application Manifest, "Icon masks": a circle of two fifths of the width around the middle."""
    icon = Image.open(FOLDER / "crush-maskable-512.png").convert("RGB")
    ground = icon.getpixel((1, 1))
    for x in range(0, 512, 4):
        for y in range(0, 512, 4):
            if (x - 255.5) ** 2 + (y - 255.5) ** 2 > (0.4 * 512) ** 2:
                assert icon.getpixel((x, y)) == ground, (x, y)
