"""A phone that can be killed.

with Server(tmp_path / "server") as server, Phone(browser, tmp_path / "phone", server) as phone:
    phone.be(user)
    phone.open(f"/visits/{visit.pk}/crush/")
    phone.wait_until_kept()
    server.stop()
    phone.kill()
    phone.reopen()
"""

import os
import shutil
import signal
import time
from contextlib import suppress
from pathlib import Path
from typing import Self

from django.conf import settings
from django.test import Client
from playwright.sync_api import Browser, BrowserContext, Error, Page, ViewportSize

from tests.browser.borrowed import LONGEST_MS
from tests.browser.conftest import ALONE, NAMES
from tests.browser.crush_server import Server
from trimops.accounts.models import User

__all__ = ["ONE_HAND", "Phone", "Server"]

ONE_HAND: ViewportSize = {"width": 360, "height": 640}
# The worker answers for this page, and every file of its version is on the disk.
IS_KEPT = (
    "async () => Boolean((await navigator.serviceWorker.ready).active && navigator.serviceWorker.controller)"
)


class Phone:
    """A Chromium with a disk of its own: what it keeps outlives being killed, as on a phone."""

    page: Page
    context: BrowserContext

    def __init__(self, browser: Browser, folder: Path, server: Server, size: ViewportSize = ONE_HAND) -> None:
        self.folder = folder
        self.complaints: list[str] = []
        self._server = server
        self._size = size
        self._kind = browser.browser_type
        self._session = ""
        self._is_open = False

    def __enter__(self) -> Self:
        self.reopen()
        return self

    def __exit__(self, *_: object) -> None:
        if self._is_open:
            self.context.close()

    def be(self, user: User) -> None:
        """Sit in that person's chair, past the sign-in form."""
        client = Client()
        client.force_login(user)
        self._session = client.cookies[settings.SESSION_COOKIE_NAME].value
        self._server.know_session(self._session)
        self._sign_in()

    def sign_out(self) -> None:
        """The session is gone, as after its last day."""
        self._session = ""
        self.context.clear_cookies(name=settings.SESSION_COOKIE_NAME)

    def open(self, path: str = "") -> Page:
        """Go there; without a path load the page anew."""
        if path:
            self.page.goto(self._server.address + path)
        else:
            self.page.reload()
        return self.page

    def wait_until_kept(self) -> None:
        """Wait until the page could be opened again without a network."""
        self.page.wait_for_function(IS_KEPT)

    def kill(self) -> None:
        """SIGKILL to the browser and all its parts, as when the phone wants its memory back."""
        mine = self._processes()
        assert mine, "the browser runs"
        # Only groups of processes that were started on this very folder, and never the test's own.
        for group in {os.getpgid(process) for process in mine} - {os.getpgid(0)}:
            os.killpg(group, signal.SIGKILL)
        ends = time.monotonic() + 60
        while self._processes():
            assert time.monotonic() < ends, "the browser lives on"
            time.sleep(0.02)
        self._is_open = False
        with suppress(Error):
            self.context.close()

    def reopen(self) -> Page:
        """Start the browser on the same disk, with an empty page; the sign-in is still good."""
        assert not self._is_open, "it is open already"
        program = next(found for name in NAMES if (found := shutil.which(name)))
        self.context = self._kind.launch_persistent_context(
            self.folder,
            executable_path=program,
            args=ALONE,
            viewport=self._size,
            has_touch=True,
            timeout=2 * LONGEST_MS,
        )
        self._is_open = True
        self.context.set_default_timeout(LONGEST_MS)
        self.page = self.context.pages[0]
        self.page.on("pageerror", lambda fault: self.complaints.append(str(fault)))
        if self._session:
            self._sign_in()
        return self.page

    def _sign_in(self) -> None:
        """Chromium writes cookies to its disk only now and then, so each start is given the sign-in again."""
        # Signing in brings a new token against forged requests; the next answer sets it.
        self.context.clear_cookies(name="csrftoken")
        cookie = {"name": settings.SESSION_COOKIE_NAME, "value": self._session, "url": self._server.address}
        self.context.add_cookies([cookie])

    def _processes(self) -> list[int]:
        """The browser's own processes, found by the folder that it was started on."""
        argument = f"--user-data-dir={self.folder}".encode()
        found = []
        for line in Path("/proc").glob("[0-9]*/cmdline"):
            # A process may end while it is looked at.
            with suppress(OSError):
                if argument in line.read_bytes().split(b"\0"):
                    found.append(int(line.parent.name))
        return found
