"""A browser's profile for each test, as good as new: only the files that it has fetched are still there.

To open a new one costs half a second of a core, and to fetch and compile all files of the crush page again another; of
what tests leave behind (pages, sign-ins, what the page keeps on the phone, its worker) nothing stays.
"""

import threading
import time
from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, BrowserContext, CDPSession, ViewportSize

# On a loaded machine a page may take its time, and a wait that succeeds costs nothing.
LONGEST_MS = 60_000
Kind = tuple[int, int, bool]
Profile = tuple[BrowserContext, CDPSession]
_free: dict[Kind, list[Profile]] = defaultdict(list)


@contextmanager
def borrowed(
    browser: Browser, address: str, size: ViewportSize, *, has_touch: bool = False
) -> Iterator[BrowserContext]:
    """For one test on the site at `address`; a second one at the same time is another. Init scripts go on pages alone.

    What fails in between may leave anything behind: then nobody gets this one again.
    """
    kind = (size["width"], size["height"], has_touch)
    context, wire = _free[kind].pop() if _free[kind] else _made(browser, size, has_touch)
    try:
        yield context
    except BaseException:
        context.close()
        raise
    _clean(context, wire, address)
    _free[kind].append((context, wire))


def close_all() -> None:
    """Before the server ends that they have lines to; returns once it has noticed."""
    for profiles in _free.values():
        for context, _ in profiles:
            context.close()
    _free.clear()
    deadline = time.monotonic() + 30
    while any("process_request_thread" in thread.name for thread in threading.enumerate()):
        assert time.monotonic() < deadline, "the server is still at something"
        time.sleep(0.02)


def _made(browser: Browser, size: ViewportSize, has_touch: bool) -> Profile:
    """Its first page stays empty, so that it lives on between two tests."""
    context = browser.new_context(viewport=size, has_touch=has_touch)
    context.set_default_timeout(LONGEST_MS)
    return context, context.new_cdp_session(context.new_page())


def _clean(context: BrowserContext, wire: CDPSession, address: str) -> None:
    for page in context.pages[1:]:
        page.close()
    context.set_offline(False)
    context.unroute_all()
    context.clear_cookies()
    context.clear_permissions()
    wire.send("Storage.clearDataForOrigin", {"origin": address, "storageTypes": "all"})
