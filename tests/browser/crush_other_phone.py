"""Somebody else's phone on the same visit: a cow put down there arrives at the server without this phone knowing."""

from __future__ import annotations

import uuid
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from tests.browser.crush_harness import cow_content

if TYPE_CHECKING:
    from tests.browser.crush_states import Walk


def put_down_elsewhere(walk: Walk, number: str) -> None:
    """She needed no cut, says the other phone."""
    now = datetime.now(UTC).isoformat()
    writing = {
        "uid": str(uuid.uuid4()),
        "kind": "cow",
        "record": str(uuid.uuid4()),
        "after": None,
        "made_at": now,
        "not_before": None,
        "is_gone": False,
        "content": cow_content(walk.yard.cows[number].pk, note="put down on the other phone"),
    }
    batch = {"phone": str(uuid.uuid4()), "sent_at": now, "seen": 0, "begun": None, "writings": [writing]}
    answer = walk.phone.context.request.post(
        f"{walk.server.address}/api/v1{walk.yard.path}writings/",
        data=batch,
        headers={"X-CSRFToken": _token(walk), "Referer": walk.server.address},
    )
    assert answer.json()["answers"][0]["outcome"] == "kept", answer.text()


def _token(walk: Walk) -> str:
    cookies = walk.phone.context.cookies(walk.server.address)
    return next(cookie["value"] for cookie in cookies if cookie["name"] == "csrftoken")
