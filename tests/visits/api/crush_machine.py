"""Two phones at one crush, a server that fails, answers that get lost, clocks that are wrong: whatever happens, the
server must end where the merge rule ends, and history must hold every version exactly once.

Everything goes through the real address and all middleware; only the server's clock is held still between steps.
"""

from collections import Counter
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from random import Random
from unittest.mock import patch
from uuid import UUID, uuid4

from django.db import OperationalError, connection
from django.test import Client
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from farms.models import Cow, Farm
from tests.factories import JPEG, make_house, make_prices, make_van
from tests.visits.api import crush_server as server
from tests.visits.api.crush_blade_rules import BladeRules
from tests.visits.api.crush_kit_model import GLUES, KitModel, dish_of, make_stock
from tests.visits.api.crush_menu import BAD_CONTENT, MENU, TUBS
from tests.visits.api.crush_model import Model
from tests.visits.api.phone import Phone, put_photo
from visits.models import Visit
from visits.services.kit.count_stock import count_stock
from visits.services.kit.stock_place import place_of_van
from visits.services.kit.stock_word import Amount, StockWord

START = datetime(2026, 3, 3, 10, tzinfo=UTC)
PHONES = st.integers(0, 1)
COWS = st.integers(0, 2)
DISHES = st.integers(0, len(MENU) - 1)
BLOCKED = [number for number, dish in enumerate(MENU) if dish.blocks]
PICKS = st.integers(0, 5)
# Whole minutes and the same few of them, so that two writings often fall on the very same moment.
MINUTES = st.sampled_from([0, 0, 1, 2, 30, 300])
SKEWS = st.sampled_from([timedelta(), timedelta(hours=-7), timedelta(hours=3), timedelta(days=400)])
NEW_NUMBERS = st.sampled_from(["900", "901", "1"])
MOSTLY = st.sampled_from([True, True, True, False])
ORDERS = st.sampled_from(["as made", "backwards", "twice over", "every other"])


class World:
    """A business that all sequences share; each has a farm and a visit of its own in it."""

    def __init__(self):
        self.house = make_house()
        make_prices(self.house.business)
        self.kit = make_stock(self.house.business)
        self.users = [self.house.trimmer, self.house.owner]
        self.clients = [Client(raise_request_exception=False) for _ in self.users]

    def sign_in(self, number):
        self.clients[number].force_login(self.users[number])

    def new_visit(self):
        business = self.house.business
        # A van for each, so that what one sequence counted does not hold the next one up.
        van = make_van(business, self.house.trimmer, f"Van {uuid4()}", weekdays=())
        place = {"latitude": Decimal("54.1"), "longitude": Decimal("-2.3")}
        farm = Farm.objects.create(business=business, name=f"Farm {uuid4()}", **place)
        cows = [Cow(business=business, farm=farm, number=str(number)) for number in (1, 2, 3)]
        Cow.objects.bulk_create(cows)
        day = START.date()
        visit = Visit.objects.create(
            business=business,
            farm=farm,
            van=van,
            reason="routine",
            state="planned",
            asked_at=START,
            changed_at=START,
            due_from=day,
            due_until=day,
            head_count=3,
            expected_minutes=30,
            planned_start=START,
            planned_finish=START + timedelta(hours=1),
        )
        return visit, cows


class CrushMachine(BladeRules, RuleBasedStateMachine):
    """`world` is set by whoever runs it. `counts` adds up what was done, over all sequences."""

    world: World
    counts: Counter = Counter()

    def __init__(self):
        super().__init__()
        self.now, self.dirty = START, False
        self.clock = patch("django.utils.timezone.now", lambda: self.now)
        self.clock.start()
        self.counts["sequences"] += 1

    def new_uid(self):
        """By chance, but the same chance when a sequence is run again: of two that tie, the greater uid shows."""
        return str(UUID(int=(self.counts["sequences"] << 96) + self.chance.getrandbits(96)))

    @initialize(first=SKEWS, second=SKEWS, seed=st.integers(0, 1000), is_begun=MOSTLY)
    def open_the_gate(self, first, second, seed, is_begun):
        self.chance = Random(seed)
        self.visit, cows = self.world.new_visit()
        self.cows = [cow.pk for cow in cows]
        self.model = Model(herd=[(cow.number, cow.pk) for cow in cows])
        self.stock = KitModel(self.world.kit)
        self.stock.set_glue(GLUES[0])
        skews = (first, second)
        self.phones = [
            Phone(self.world.clients[n], self.visit, skews[n], new_uid=self.new_uid) for n in (0, 1)
        ]
        for number, phone in enumerate(self.phones):
            self.world.sign_in(number)
            phone.known, phone.told, phone.good, phone.bad, phone.added = {}, {}, [], {}, {}
        self.pictures = {}
        if is_begun:
            self.begin(0)
            self._send(0, "as made")

    # What is put down

    @rule(number=PHONES)
    def begin(self, number):
        phone = self.phones[number]
        phone.begun = phone.begun or {"at": phone.clock(), "checked": True}

    @rule(number=PHONES, cow=COWS, dish=DISHES, pick=PICKS)
    def put_down_a_cow(self, number, cow, dish, pick):
        key = {"id": self.cows[cow]}
        self._write(number, "cow", f"c{cow}", self._cow(key, dish), pick)

    @rule(number=PHONES, herd_number=NEW_NUMBERS, is_another=st.booleans(), dish=DISHES, pick=PICKS)
    def put_down_a_cow_nobody_knows(self, number, herd_number, is_another, dish, pick):
        new = {"uid": self.new_uid(), "number": herd_number, "is_another": is_another}
        new = self.phones[number].added.setdefault(herd_number, new)
        self._write(number, "cow", f"n{new['uid']}", self._cow({"new": new}, dish), pick)

    @rule(number=PHONES, item=st.sampled_from(["wood", "glue", "wrap"]), extra=st.integers(-3, 3), pick=PICKS)
    def mend_the_count_of_kit(self, number, item, extra, pick):
        content = {"consumable": self.world.kit[item].pk, "extra": f"{extra}.50"}
        self._write(number, "kit", item, content, pick)

    @rule(number=PHONES, minutes=st.integers(1, 9), tub=st.sampled_from(TUBS), pick=PICKS)
    def wash_down(self, number, minutes, tub, pick):
        phone = self.phones[number]
        content = {
            "substance": "peracetic acid",
            "dilution": tub.dilution,
            "contact_minutes": str(minutes),
            "washed_at": phone.clock(),
            "consumable": self.world.kit[tub.product].pk if tub.product else None,
            "litres": tub.litres,
        }
        self._write(number, "wash", "wash", content, pick)

    @rule()
    def the_office_changes_a_recipe(self):
        self.stock.change_recipe()
        self.counts["recipes changed"] += 1

    @rule(item=st.sampled_from(["glue", "gloves", "liquid"]), counted=st.integers(0, 90), ago=MINUTES)
    def count_what_lies_in_the_van(self, item, counted, ago):
        at, by = self.now - timedelta(minutes=ago), self.world.house.owner
        word = StockWord(at=at, noted_at=self.now, by=by, uid=UUID(self.new_uid()))
        amount = Amount(self.world.kit[item], Decimal(counted))
        count_stock(place=place_of_van(self.visit.van), counted=[amount], word=word)
        self.dirty = True
        self.counts["counts of the van"] += 1

    @rule(number=PHONES, name=st.sampled_from(["The herd manager", "The milker"]), pick=PICKS)
    def sign_off(self, number, name, pick):
        content = {
            "received_by": name,
            "was_done": "3 cows",
            "farm_to_do": "blocks off in 4 weeks",
            "washed_down": True,
            "hygiene_note": "",
        }
        self._write(number, "sign_off", "sign_off", content, pick)

    @rule(number=PHONES, pick=PICKS)
    def take_back(self, number, pick):
        phone = self.phones[number]
        mine = [writing for writing in phone.good if writing["kind"] != "sign_off"]
        if mine:
            writing = mine[pick % len(mine)]
            self._note(number, phone.undo(writing))

    @rule(number=PHONES, cow=COWS, dish=DISHES, is_sent=MOSTLY)
    def put_down_the_wrong_cow(self, number, cow, dish, is_sent):
        self.put_down_a_cow(number, cow, dish, 0)
        writing = self.phones[number].good[-1]
        if is_sent:
            self._send(number, "as made")
        if writing in self.phones[number].good:
            self._note(number, self.phones[number].undo(writing))
            self.counts["cows taken back"] += 1

    @rule(number=PHONES, cow=COWS, fault=st.integers(0, len(BAD_CONTENT) - 1))
    def put_down_nonsense(self, number, cow, fault):
        changes, fields = BAD_CONTENT[fault]
        phone = self.phones[number]
        writing = phone.write({**self._cow({"id": self.cows[cow]}, 0), **changes})
        phone.bad[writing["uid"]] = fields
        self.counts["bad writings"] += 1

    def _cow(self, cow, dish):
        return {"cow": cow, "told_vet": "The practice", "entry": MENU[dish].entry}

    def _write(self, number, kind, key, content, pick):
        """An edit of something the phone knows of that thing, or a first word on it."""
        phone = self.phones[number]
        known = phone.known.get((kind, key), [])
        after = known[-1 - pick] if pick < len(known) else None
        same = after and (pick % 2 or after["record"] in {writing["record"] for writing in phone.good})
        record = after["record"] if same else self.new_uid()
        uid = after["uid"] if after else None
        self._note(number, phone.write(content, kind, record, uid), (kind, key))

    def _note(self, number, writing, key=None):
        phone = self.phones[number]
        key = key or next(k for k, versions in phone.known.items() if writing["after"] in uids_of(versions))
        phone.known.setdefault(key, []).append(writing)
        phone.good.append(writing)
        self.counts["writings"] += 1

    # What happens to it on the way

    @rule(number=PHONES, order=ORDERS)
    def send(self, number, order):
        self._send(number, order)

    @rule(number=PHONES, order=ORDERS)
    def send_and_lose_the_answer(self, number, order):
        self._send(number, order, is_heard=False)
        self.counts["answers lost"] += 1

    @rule(number=PHONES, pick=PICKS)
    def repeat_what_was_sent_before(self, number, pick):
        phone = self.phones[number]
        self._send(number, "as made", phone.good[-1 - pick :], is_heard=False)
        self.counts["repeats"] += 1

    @rule(number=PHONES, at=st.integers(1, 60))
    def send_to_a_server_that_fails_on_the_way(self, number, at):
        phone = self.phones[number]
        body, before = phone.body(), self._footprint()
        with failing(at):
            answer = phone.post(body)
        if answer.status_code == 200:
            self._arrived(phone, body, answer)
            return
        assert answer.status_code == 500, (answer.status_code, answer.content[:300])
        self.counts["server failures"] += 1
        if self._footprint() != before:
            # It failed after the last word was kept: to the phone, an answer that got lost.
            self._into_model(phone, body)
        self.dirty = True

    @rule(number=PHONES)
    def send_with_a_session_that_has_expired(self, number):
        phone, before = self.phones[number], self._footprint()
        phone.client.logout()
        answer = phone.post(phone.body())
        assert (answer.status_code, answer.json()["code"]) == (401, "not_signed_in")
        assert self._footprint() == before
        self.world.sign_in(number)
        self.counts["sessions expired"] += 1

    @rule(number=PHONES, pick=PICKS)
    def send_a_photo(self, number, pick):
        phone = self.phones[number]
        mine = [writing for writing in phone.good if writing["kind"] == "cow"]
        if mine:
            uid, writing = self.new_uid(), mine[pick % len(mine)]
            for _ in range(1 + pick % 2):
                assert put_photo(phone, writing["record"], uid, JPEG).status_code in (200, 201)
            self.pictures[uid] = writing["record"]
            self.dirty = True
            self.counts["photos"] += 1

    @rule(minutes=MINUTES)
    def time_goes_by(self, minutes):
        self.now += timedelta(minutes=minutes)

    @rule(number=PHONES, wrong=SKEWS)
    def a_phones_clock_jumps(self, number, wrong):
        self.phones[number].wrong = wrong
        self.counts["clock jumps"] += 1

    @rule(number=PHONES, cow=COWS, dish=DISHES, minutes=MINUTES, wrong=SKEWS)
    def a_clock_jumps_between_putting_down_and_sending(self, number, cow, dish, minutes, wrong):
        """By chance alone these four seldom come in a row; here the last answer must hold the time."""
        self._send(number, "as made")
        self.put_down_a_cow(number, cow, dish, 0)
        self.time_goes_by(minutes)
        self.a_phones_clock_jumps(number, wrong)
        self._send(number, "as made")

    @rule(number=PHONES, cow=COWS, before=st.sampled_from(BLOCKED), dish=DISHES, pick=PICKS)
    def a_recipe_changes_between_her_block_and_her_next_words(self, number, cow, before, dish, pick):
        """By chance alone a cow with a block is seldom edited after the office changed what a block takes."""
        self.put_down_a_cow(number, cow, before, 0)
        self._send(number, "as made")
        self.the_office_changes_a_recipe()
        self.put_down_a_cow(number, cow, dish, pick)
        self._send(number, "as made")

    def _send(self, number, order, writings=None, is_heard=True):
        phone = self.phones[number]
        sent = phone.waiting if writings is None else writings
        sent = {
            "as made": sent,
            "backwards": sent[::-1],
            "twice over": sent + sent,
            "every other": sent[::2],
        }[order]
        body = phone.body(sent[:100])
        answer = phone.post(body)
        self._arrived(phone, body, answer, is_heard)
        self.counts["sendings"] += 1

    def _arrived(self, phone, body, answer, is_heard=True):
        assert answer.status_code == 200, answer.content
        outcomes = self._into_model(phone, body)
        told = answer.json()
        assert [a["uid"] for a in told["answers"]] == [w["uid"] for w in body["writings"]]
        assert [a["outcome"] for a in told["answers"]] == outcomes
        self._check_answers(phone, told)
        if is_heard:
            self._hear(phone, told)
        self.dirty = True

    def _into_model(self, phone, body):
        if phone.begun:
            self.model.is_started = True
        outcomes = []
        for writing in body["writings"]:
            is_bad = writing["uid"] in phone.bad
            outcomes.append(
                "refused" if is_bad else self.model.arrives(writing, phone.uid, body["sent_at"], self.now)
            )
        self.stock.heard(self.model)
        return outcomes

    def _check_answers(self, phone, told):
        shown = self.model.shown()
        for answer in told["answers"]:
            if answer["outcome"] == "refused":
                fields = {fault["field"] for fault in answer["faults"]}
                assert fields == self._expected_fields(phone.bad.get(answer["uid"], {""})), answer
            else:
                group = self.model.kept[answer["uid"]].group
                assert answer["shows"] == shown[group].uid
                assert answer["beside"] == self.model.beside(answer["uid"])

    def _expected_fields(self, bad):
        """Which cows there are is asked only once the visit takes cows at all."""
        return {""} if bad == {"content.cow.id"} and not self.model.is_started else bad

    def _hear(self, phone, told):
        phone.hear(told)
        refused = {answer["uid"] for answer in told["answers"] if answer["outcome"] == "refused"}
        for writing in [w for w in phone.good if w["uid"] in refused]:
            # Kept on the phone for mending: the same words go out once more under a new name.
            phone.good.remove(writing)
            again = {**writing, "uid": self.new_uid()}
            phone.good.append(again)
            phone.waiting.append(again)
            for writings in phone.known.values():
                writings[:] = [again if w is writing else w for w in writings]
        shown = self.model.shown()
        for other in told["others"]:
            assert other["uid"] not in phone.told, "told twice"
            kept = self.model.kept[other["uid"]]
            assert other["shows"] == (shown[kept.group].uid == other["uid"])
            assert other["beside"] == self.model.beside(other["uid"])
            assert other["content"] == kept.writing["content"] or other["kind"] != "cow"
            phone.told[other["uid"]] = other
            self._learn(phone, other)

    def _learn(self, phone, other):
        if other["kind"] == "cow" and "id" in other["content"]["cow"]:
            key = ("cow", f"c{self.cows.index(other['content']['cow']['id'])}")
            phone.known.setdefault(key, []).append(other)

    def _footprint(self):
        state = Visit.objects.within(self.visit.scope).get(pk=self.visit.pk)
        return (
            [(row.uid, row.placed_at) for row in server.writings(self.visit)],
            (state.state, state.signed_by, state.started_at),
            server.cows(self.visit),
            server.ledger(self.visit),
            server.blocks(self.visit),
            server.open_rechecks(self.visit),
        )

    # What must hold

    @invariant()
    def the_server_is_where_the_rule_ends(self):
        if not self.dirty:
            return
        self.dirty = False
        self._check_history()
        added = self._check_added_cows()
        self._check_cows(added)
        self._check_kit()
        self._check_the_rest()

    def _check_history(self):
        found = server.writings(self.visit)
        assert Counter(str(row.uid) for row in found) == Counter(self.model.kept.keys())
        for row in found:
            kept = self.model.kept[str(row.uid)]
            assert (row.placed_at, str(row.phone), row.is_gone) == (
                kept.placed_at,
                kept.phone,
                kept.writing["is_gone"],
            )
            assert row.kind != "cow" or row.content == kept.writing["content"]

    def _check_added_cows(self):
        """Added cows are one and the same on the server where they are in the rule."""
        found = server.added(self.visit)
        assert found.keys() == self.model.added.keys()
        keys = {self.model.added[uid]: pk for uid, pk in found.items()}
        assert {uid: keys[self.model.added[uid]] for uid in found} == found
        assert len(set(keys.values())) == len(keys)
        return keys

    def _check_cows(self, added):
        there = self.model.last_of("cow")
        pk = {kept.uid: added.get(kept.group[1], kept.group[1]) for kept in there}
        wanted = {
            pk[kept.uid]: (kept.writing["record"], "The practice", kept.writing["content"]["entry"])
            for kept in there
        }
        assert server.cows(self.visit) == wanted
        times, versions = self.model.begun(), Counter(kept.group for kept in self.model.kept.values())
        trims = server.trims(self.visit)
        for kept in there:
            trim = trims[pk[kept.uid]]
            assert (trim.recorded_at, trim.version) == (times[kept.uid], versions[kept.group])
        dishes = {pk[kept.uid]: dish_of(kept) for kept in there}
        assert server.open_rechecks(self.visit) == Counter(
            (cow, foot) for cow, dish in dishes.items() for foot in dish.rechecks
        )
        assert server.blocks(self.visit) == sorted(
            (cow, *block) for cow, dish in dishes.items() for block in dish.blocks
        )
        assert server.referrals(self.visit) == Counter(
            {cow: d.referrals for cow, d in dishes.items() if d.referrals}
        )

    def _check_kit(self):
        assert server.used_at(self.visit) == self.stock.used_at(self.model)
        for item in ("glue", "gloves", "liquid"):
            assert server.counted_wrong(self.visit, self.world.kit[item]) == []

    def _check_the_rest(self):
        washed = {
            kept.writing["record"]: (
                kept.writing["content"]["dilution"],
                Decimal(kept.writing["content"]["contact_minutes"]),
                kept.writing["content"]["consumable"],
                decimal_of(kept.writing["content"]["litres"]),
            )
            for kept in self.model.last_of("wash")
        }
        assert server.wash_downs(self.visit) == washed
        self.check_blades()
        state = Visit.objects.within(self.visit.scope).get(pk=self.visit.pk)
        wanted = "finished" if self.model.is_finished else "under_way" if self.model.is_started else "planned"
        assert state.state == wanted
        if self.model.is_finished:
            assert state.signed_by == self.model.last_of("sign_off")[-1].writing["content"]["received_by"]
        self._check_photos()

    def _check_photos(self):
        here = server.trims(self.visit) | server.taken_back(self.visit)
        cow_of = {str(row.record): row.cow_id for row in server.writings(self.visit) if row.kind == "cow"}
        found = server.photos(self.visit)
        assert found.keys() == self.pictures.keys()
        for uid, record in self.pictures.items():
            cow = cow_of.get(record)
            assert found[uid][1] == (cow if cow in here else None)

    def teardown(self):
        """At last all is sent, and every phone knows all that the other wrote; nothing was lost on the way."""
        try:
            if not hasattr(self, "phones"):
                return
            for phone in self.phones:
                phone.begun = phone.begun or {"at": phone.clock(), "checked": True}
            for number in (0, 1, 0):
                phone = self.phones[number]
                self._send(number, "as made")
                while phone.waiting:
                    self._send(number, "as made")
            self.the_server_is_where_the_rule_ends()
            written = {writing["uid"] for phone in self.phones for writing in phone.good}
            assert written == self.model.kept.keys()
            for one, other in (self.phones, self.phones[::-1]):
                assert one.told.keys() == {writing["uid"] for writing in other.good}
        finally:
            self.clock.stop()


def uids_of(writings):
    return {writing["uid"] for writing in writings}


def decimal_of(text):
    return None if text is None else Decimal(text)


@contextmanager
def failing(at):
    """The database gives out at the statement of that number, if it comes to it."""
    count = 0

    def give_out(execute, sql, params, many, context):
        nonlocal count
        count += 1
        if count == at:
            raise OperationalError("the disk is gone")
        return execute(sql, params, many, context)

    with connection.execute_wrapper(give_out):
        yield
