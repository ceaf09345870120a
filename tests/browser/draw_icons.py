"""Paints the icons of the crush page from their drawings: `python -m tests.browser.draw_icons` writes the PNG files.

They are committed, so nobody needs to run it until a drawing changes; a test says when that is forgotten.
"""

import shutil
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

FOLDER = Path(__file__).resolve().parents[2] / "visits/static/visits/crush/icons"
ICONS = {
    "crush-192.png": ("crush.svg", 192),
    "crush-512.png": ("crush.svg", 512),
    "crush-maskable-512.png": ("crush-maskable.svg", 512),
}


def paint(browser: Browser, drawing: Path, size: int) -> bytes:
    """The drawing as a PNG of that many pixels a side, see-through where nothing is drawn."""
    page = browser.new_page(viewport={"width": size, "height": size}, device_scale_factor=1)
    svg = drawing.read_text().replace("<svg ", f'<svg width="{size}" height="{size}" ', 1)
    page.set_content(f"<style>*{{margin:0;background:transparent}}svg{{display:block}}</style>{svg}")
    picture = page.screenshot(omit_background=True)
    page.close()
    return picture


def main() -> None:
    with sync_playwright() as playwright:
        path = shutil.which("chromium")
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        for name, (drawing, size) in ICONS.items():
            (FOLDER / name).write_bytes(paint(browser, FOLDER / drawing, size))
        browser.close()


if __name__ == "__main__":
    main()
