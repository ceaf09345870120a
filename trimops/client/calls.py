"""How every operation is called: signed, once for each key, again after a while where that is safe."""

import time
from collections.abc import Callable, Iterator, Mapping
from typing import Any
from uuid import uuid4

import httpx

from trimops.client.refused import NotRead, Refused

TRIES = 5
LONGEST_WAIT = 60.0
AGAIN = (429, 503)


class Calls:
    """`at` is the site (https://...), `token` what a person made for this program.

    A call that is refused for now (429, 503) or whose line broke is tried again, under the same Idempotency-Key, up to
    `TRIES` times: it is done once. Which version of a row was read is remembered by its address, and sent as If-Match
    when it is changed. `pause` waits so many seconds.
    """

    def __init__(
        self,
        at: str,
        token: str,
        *,
        http: httpx.Client | None = None,
        pause: Callable[[float], None] = time.sleep,
    ) -> None:
        self.at, self.pause = at.rstrip("/"), pause
        self.http = http or httpx.Client(timeout=30)
        self.signed = {"Authorization": f"Bearer {token}"}
        self.tags: dict[str, str] = {}

    def asked(self, path: str, query: Mapping[str, Any]) -> Any:
        """What is read at that address."""
        answer = self._call("GET", path, query=query)
        self._remember(path, answer)
        return answer.json()

    def file(self, path: str, query: Mapping[str, Any]) -> bytes:
        return self._call("GET", path, query=query).content

    def pages(self, path: str, query: Mapping[str, Any]) -> Iterator[Any]:
        """Each row of a list, page after page."""
        page = self.asked(path, query)
        while True:
            yield from page["items"]
            if not page["next"]:
                return
            page = self._call("GET", page["next"]).json()

    def done(
        self, path: str, body: object, key: str, *, query: Mapping[str, Any] | None = None, kind: str = ""
    ) -> Any:
        """Something done under `key`, or under a new one. `kind` is what a body of bytes is."""
        signs = {"Idempotency-Key": key or str(uuid4()), **_kind(kind)}
        answer = self._call("POST", path, query=query, body=body, headers=signs)
        return answer.json() if answer.content else None

    def changed(self, method: str, path: str, body: object, match: str) -> Any:
        """A row changed or taken away, if it is still as it was read here; NotRead if it never was."""
        tag = match or self.tags.get(path)
        if tag is None:
            raise NotRead(f"Read {path} first, or say which version you change.")
        answer = self._call(method, path, body=body, headers={"If-Match": tag})
        self._remember(path, answer)
        return answer.json() if answer.content else None

    def sent(self, method: str, path: str, query: Mapping[str, Any], body: object, *, kind: str = "") -> Any:
        """What may be repeated as it is: a file or a batch with names of its own. `kind` is what a body of bytes is."""
        answer = self._call(method, path, query=query, body=body, headers=_kind(kind))
        return answer.json() if answer.content else None

    def _remember(self, path: str, answer: httpx.Response) -> None:
        if tag := answer.headers.get("ETag"):
            self.tags[path] = tag

    def _call(
        self,
        method: str,
        path: str,
        *,
        query: Mapping[str, Any] | None = None,
        body: object = None,
        headers: Mapping[str, str] | None = None,
    ) -> httpx.Response:
        where = path if path.startswith(("http://", "https://")) else f"{self.at}/api/v1{path}"
        said: dict[str, Any] = {"content": body} if isinstance(body, bytes) else {"json": body}
        for left in reversed(range(TRIES)):
            try:
                answer = self.http.request(
                    method,
                    where,
                    params=_words(query) or None,
                    headers={**self.signed, **(headers or {})},
                    **(said if body is not None else {}),
                )
            except httpx.TransportError:
                if not left:
                    raise
                self.pause(float(TRIES - left))
                continue
            if answer.status_code not in AGAIN or not left:
                break
            self.pause(_wait(answer))
        if answer.status_code >= 400:
            raise Refused(answer.status_code, _problem(answer))
        return answer


def _kind(kind: str) -> dict[str, str]:
    return {"Content-Type": kind} if kind else {}


def _words(query: Mapping[str, Any] | None) -> dict[str, str]:
    found = {name: value for name, value in (query or {}).items() if value is not None}
    return {
        name: str(value).lower() if isinstance(value, bool) else str(value) for name, value in found.items()
    }


def _wait(answer: httpx.Response) -> float:
    told = answer.headers.get("Retry-After", "")
    return min(float(told), LONGEST_WAIT) if told.isdigit() else 1.0


def _problem(answer: httpx.Response) -> Mapping[str, Any]:
    try:
        told = answer.json()
    except ValueError:
        return {"detail": answer.text[:200]}
    return told if isinstance(told, dict) else {}
