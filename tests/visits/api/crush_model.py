"""The merge rule once more, written by itself: what must show, given all that arrived. Knows nothing of the program."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta

MOMENT = timedelta(microseconds=1)


def corrected(writing, sent_at, received_at):
    """When a writing was made, on the server's clock."""
    age = max(_at(sent_at) - _at(writing["made_at"]), timedelta(0))
    at = received_at - age
    if writing["not_before"] and at < _at(writing["not_before"]):
        at = _at(writing["not_before"])
    return received_at if at > received_at else at


def _at(text):
    return datetime.fromisoformat(text)


@dataclass
class Kept:
    """A writing that arrived: what it is a version of, by whom, when."""

    writing: dict
    group: tuple
    phone: str
    placed_at: datetime

    @property
    def uid(self):
        return self.writing["uid"]


@dataclass
class Model:
    """Everything that arrived, by uid, and the cows of the farm by number."""

    kept: dict = field(default_factory=dict)
    herd: list = field(
        default_factory=list
    )  # (number, key); the key is a database key or the uid that added her
    added: dict = field(default_factory=dict)  # uid of a new cow -> key in `herd`
    is_started: bool = False
    is_finished: bool = False

    def arrives(self, writing, phone, sent_at, received_at):
        """Take in one writing that is right in itself; what became of it."""
        if writing["uid"] in self.kept:
            return "known"
        if not self.is_started:
            return "refused"
        at = corrected(writing, sent_at, received_at)
        self.kept[writing["uid"]] = Kept(writing, self.group_of(writing), phone, at)
        self.is_finished |= writing["kind"] == "sign_off"
        return "kept"

    def group_of(self, writing):
        if writing["kind"] != "cow":
            return writing["kind"], writing["record"]
        cow = writing["content"]["cow"]
        return "cow", cow["id"] if "id" in cow else self._cow_added(cow["new"])

    def _cow_added(self, new):
        if new["uid"] not in self.added:
            same = [key for number, key in self.herd if number == new["number"]]
            if len(same) == 1 and not new["is_another"]:
                self.added[new["uid"]] = same[0]
            else:
                self.herd.append((new["number"], new["uid"]))
                self.added[new["uid"]] = new["uid"]
        return self.added[new["uid"]]

    def effective(self):
        """uid -> when it counts as made. Settles by going over all of them until nothing moves."""
        times = {uid: kept.placed_at for uid, kept in self.kept.items()}
        is_settled = False
        while not is_settled:
            is_settled = True
            for uid, kept in self.kept.items():
                before = self.kept.get(kept.writing["after"])
                if before and before.group == kept.group and times[uid] <= times[before.uid]:
                    times[uid] = times[before.uid] + MOMENT
                    is_settled = False
        return times

    def begun(self):
        """uid -> when the first of its line of edits was made: the day of the work."""
        return {uid: self._first(uid).placed_at for uid in self.kept}

    def _first(self, uid):
        kept = self.kept[uid]
        seen = {uid}
        while (before := self.kept.get(kept.writing["after"])) and before.group == kept.group:
            if before.uid in seen:
                return self.kept[uid]
            seen.add(before.uid)
            kept = before
        return kept

    def shown(self):
        """group -> the writing that shows, gone ones too."""
        times, best = self.effective(), {}
        for uid, kept in self.kept.items():
            rank = (times[uid], uid)
            if kept.group not in best or rank > best[kept.group][0]:
                best[kept.group] = (rank, kept)
        return {group: kept for group, (_, kept) in best.items()}

    def last_of(self, kind):
        """Of all that show of a kind and are there, in the order in which they count."""
        times = self.effective()
        rows = [kept for group, kept in self.shown().items() if group[0] == kind]
        return sorted(
            (kept for kept in rows if not kept.writing["is_gone"]),
            key=lambda kept: (times[kept.uid], kept.uid),
        )

    def beside(self, uid):
        """The uids that another phone wrote of the same thing, neither built on this one nor this on them."""
        mine = self.kept[uid]
        return sorted(
            other.uid
            for other in self.kept.values()
            if other.group == mine.group
            and other.phone != mine.phone
            and other.uid not in self._line(uid)
            and uid not in self._line(other.uid)
        )

    def _line(self, uid):
        line = []
        kept = self.kept.get(uid)
        while kept:
            line.append(kept.uid)
            before = self.kept.get(kept.writing["after"])
            kept = before if before and before.group == kept.group else None
        return line
