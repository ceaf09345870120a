"""A phone at the crush, as the address sees it: it makes writings by its own clock and sends them."""

import json
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import timedelta
from urllib.parse import urlencode
from uuid import uuid4

from django.urls import reverse
from django.utils import timezone

EMPTY_ENTRY = {
    "mobility_scale": "",
    "mobility_score": None,
    "belly_band_minutes": None,
    "crush_seconds": None,
    "note": "",
    "for_vet": "",
    "feet": [],
}


def foot(name="LH", findings=(), actions=(), **fields):
    return {"foot": name, "findings": list(findings), "actions": list(actions), **fields}


CUT = {"kind": "length", "claw": "medial"}
WRAP = {"kind": "wrap", "claw": "", "block_kind": ""}
ULCER = {"lesion": "SU", "claw": "lateral", "zone": 4, "severity": 2}
BLOCK = {"kind": "block", "claw": "medial", "block_kind": "wood"}


def blocked(name="LH"):
    """A sole ulcer with a wooden block on the claw beside it."""
    return foot(name, [ULCER], [CUT, BLOCK])


def cow_content(cow, *feet, told_vet="", **entry):
    """`cow` is a key, or the words of a new cow."""
    named = {"id": cow} if isinstance(cow, int) else {"new": cow}
    return {"cow": named, "told_vet": told_vet, "entry": {**EMPTY_ENTRY, "feet": list(feet), **entry}}


@dataclass
class Phone:
    """`wrong` is how far its clock is ahead of ours; `waiting` what it has not been told is kept."""

    client: object
    visit: object
    wrong: timedelta = timedelta()
    new_uid: Callable = lambda: str(uuid4())
    seen: int = 0
    heard_at: str | None = None
    begun: dict | None = None
    waiting: list = field(default_factory=list)

    def __post_init__(self):
        self.uid = self.new_uid()

    def clock(self, ago: timedelta = timedelta()) -> str:
        return (timezone.now() + self.wrong - ago).isoformat()

    def write(self, content, kind="cow", record=None, after=None, ago=timedelta(), **changes):
        writing = {
            "uid": self.new_uid(),
            "kind": kind,
            "record": str(record or self.new_uid()),
            "after": after,
            "made_at": self.clock(ago),
            "not_before": self.heard_at,
            "is_gone": False,
            "content": content,
            **changes,
        }
        self.waiting.append(writing)
        return writing

    def edit(self, writing, content=None, **changes):
        content = writing["content"] if content is None else content
        return self.write(content, writing["kind"], writing["record"], writing["uid"], **changes)

    def undo(self, writing):
        return self.edit(writing, is_gone=True)

    def body(self, writings=None, **changes):
        sent = self.waiting if writings is None else writings
        return {
            "phone": self.uid,
            "sent_at": self.clock(),
            "seen": self.seen,
            "begun": self.begun,
            "writings": list(sent),
            **changes,
        }

    def post(self, body):
        return post(self.client, self.visit, body)

    def send(self, writings=None, **changes):
        """Send, and hear the answer: what was kept no longer waits."""
        answer = self.post(self.body(writings, **changes))
        assert answer.status_code == 200, answer.content
        self.hear(answer.json())
        return answer.json()

    def hear(self, told):
        self.seen, self.heard_at = told["cursor"], told["now"]
        done = {answer["uid"] for answer in told["answers"]}
        self.waiting = [writing for writing in self.waiting if writing["uid"] not in done]


def post(client, visit, body, **extra):
    text = body if isinstance(body, str | bytes) else json.dumps(body)
    return client.post(address(visit), text, content_type="application/json", **extra)


def address(visit):
    return reverse("crush_writings", kwargs={"pk": visit if isinstance(visit, int) else visit.pk})


def put_photo(phone, record, uid, picture, content_type="image/jpeg", **query):
    words = {"record": record, "foot": "LH", "taken_at": phone.clock(), **query}
    to = reverse("crush_photo", kwargs={"pk": phone.visit.pk, "uid": uid})
    return phone.client.put(f"{to}?{urlencode(words)}", picture, content_type=content_type)


def outcomes(told):
    return [answer["outcome"] for answer in told["answers"]]
