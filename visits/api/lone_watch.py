"""The watch over whoever works alone: its rules, whom it tells, each watch and what came of it."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import YesOrNo
from trimops.api.kinds import RowApi, RowsApi, StepApi, set_fields
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import RowContent
from visits.api.visits import id_filter
from visits.domain.lone_watch.watch_cautions import PLAINLY
from visits.models import LoneWatch, WatchCall, WatchContact, WatchEvent, WatchRules
from visits.selectors.lone_watch.watch_view import CallLine, calls_of, events_of, rules_of
from visits.selectors.lone_watch.why_nobody_is_told import why_nobody_is_told
from visits.services.lone_watch.check_in import check_in
from visits.services.lone_watch.save_watch_contact import drop_watch_contact, save_watch_contact
from visits.services.lone_watch.save_watch_rules import WatchWish, save_watch_rules
from visits.services.lone_watch.try_watch import try_watch

RULES = ["is_on", "watches_plan", "grace_minutes", "answer_minutes", "repeat_minutes"]
CONTACT = ["name", "phone", "email", "told_by", "van", "turn"]


class WatchShown(RowContent):
    """A watch over one visit; a test has none. `asked_at`: the trimmer was asked whether all is well; `told_at`: nobody
    answered, so others were told."""

    trimmer_name = serializers.CharField(source="trimmer.name")

    class Meta:
        model = LoneWatch
        fields = [
            "id", "visit", "trimmer", "trimmer_name", "van", "is_test", "is_by_plan", "is_quiet_place", "state",
            "began_at", "expected_finish", "next_at", "well_until", "asked_at", "answer_until", "told_at", "tellings",
            "taken_at", "taken_by", "last_heard_at", "ended_at", "ended_how",
        ]  # fmt: skip


class WatchEventShown(RowContent):
    """What happened, and when we came to know of it."""

    class Meta:
        model = WatchEvent
        fields = ["at", "noted_at", "words"]


class WatchMessageShown(serializers.Serializer):  # type: ignore[type-arg]
    """A message of a call, and where it stands."""

    channel = serializers.CharField()
    state = serializers.CharField()


class WatchCallShown(RowContent):
    """Somebody who was asked or told, and what they said."""

    messages = WatchMessageShown(many=True)

    class Meta:
        model = WatchCall
        fields = ["number", "name", "is_trimmer", "at", "answer", "answered_at", "messages"]

    def to_representation(self, instance: CallLine) -> Said:
        call, sent = instance.call, instance.messages
        known = {name: getattr(call, name) for name in self.Meta.fields if name != "messages"}
        told: Said = super().to_representation({**known, "messages": sent})
        return told


class WholeWatchShown(WatchShown):
    """A watch with its story. `cautions` belong beside it wherever it is shown."""

    events = WatchEventShown(many=True)
    calls = WatchCallShown(many=True)
    cautions = serializers.ListField(child=serializers.CharField())

    class Meta(WatchShown.Meta):
        fields = [*WatchShown.Meta.fields, "events", "calls", "cautions"]

    def to_representation(self, instance: LoneWatch) -> Said:
        told: Said = WatchShown(instance, context=self.context).data
        return {
            **told,
            "events": WatchEventShown(events_of(instance), many=True).data,
            "calls": WatchCallShown(calls_of(instance), many=True).data,
            "cautions": list(PLAINLY),
        }


class WellWord(serializers.Serializer):  # type: ignore[type-arg]
    """`is_done`: the work is finished and the watch is over; else it asks again in 30 minutes."""

    is_done = serializers.BooleanField(default=False)


class WatchRulesWord(RowContent):
    """What the business wants."""

    class Meta:
        model = WatchRules
        fields = RULES


class WatchRulesShown(RowContent):
    """What the business wants. `why_not`: why nobody would be told, empty where somebody would."""

    why_not = serializers.SerializerMethodField()
    cautions = serializers.SerializerMethodField()
    changed_at = serializers.DateTimeField(allow_null=True)

    class Meta:
        model = WatchRules
        fields = [*RULES, "changed_at", "why_not", "cautions"]

    def get_why_not(self, row: WatchRules) -> str:
        return why_nobody_is_told(self.context["scope"], self.context["now"])

    def get_cautions(self, row: WatchRules) -> list[str]:
        return list(PLAINLY)


class WatchContactWord(RowContent):
    """Somebody who is told when a trimmer does not check in; the lowest `turn` first. Without a van: of all vans."""

    class Meta:
        model = WatchContact
        fields = CONTACT


class WatchContactShown(RowContent):
    """Somebody who is told."""

    class Meta:
        model = WatchContact
        fields = ["id", *CONTACT]


class WatchesApi(RowsApi[LoneWatch]):
    """Watches, open and over. The watch is no replacement for an emergency call: it only notices that somebody did not
    check in, and hangs on this server, its power, its network, and on somebody who reads a message."""

    model = LoneWatch
    related = ("trimmer",)
    ops = {
        "get": Op(
            Action.KEEP_WATCH,
            "list_watches",
            "The watches",
            shows=WatchShown,
            lists=True,
            orders={"began_at": ("began_at", "id"), "id": ("id",)},
            filters={
                "is_open": Filter(YesOrNo(), "ended_at__isnull"),
                "visit": id_filter("visit_id"),
                "is_test": Filter(YesOrNo(), "is_test"),
            },
        )
    }


class WatchApi(RowApi[LoneWatch]):
    """One watch: what happened, who was told, and whether it went."""

    model = LoneWatch
    related = ("trimmer",)
    ops = {"get": Op(Action.KEEP_WATCH, "read_watch", "One watch", shows=WholeWatchShown)}


class WatchWellApi(StepApi[LoneWatch]):
    """I am well, said by a person: a program must never say it for somebody. Whoever was told hears of it. Said twice,
    or after the end, it changes nothing."""

    model = LoneWatch
    related = ("trimmer",)
    ops = {
        "post": Op(Action.KEEP_WATCH, "say_well", "I am well", takes=WellWord, shows=WatchShown, repeats=True)
    }

    def act(self, row: LoneWatch, content: Said) -> LoneWatch:
        who = self.seat.user.name
        return check_in(watch=row, is_done=content["is_done"], at=self.now, who=who)


class WatchRulesApi(RowApi[WatchRules]):
    """Whether lone work is watched, and how long is waited at each step. Refused (cannot_tell_anybody): switched on
    where nothing can leave this server or a van has nobody to tell, for then it would only seem to watch. Switched off,
    open watches end."""

    model = WatchRules
    ops = {
        "get": Op(Action.KEEP_WATCH, "read_watch_rules", "The rules of the watch", shows=WatchRulesShown),
        "patch": Op(
            Action.KEEP_WATCH,
            "change_watch_rules",
            "Switch the watch on or off",
            takes=WatchRulesWord,
            shows=WatchRulesShown,
            changes=True,
        ),
    }

    def row(self, *, is_locked: bool = False) -> WatchRules:
        found = rules_of(self.scope)
        if found is None:
            return WatchRules(business=self.seat.business)
        return found.locked() if is_locked else found

    def change(self, row: WatchRules, content: Said) -> WatchRules:
        wish = WatchWish(**{name: content.get(name, getattr(row, name)) for name in RULES})
        return save_watch_rules(business=self.seat.business, wish=wish, at=self.now, by=self.seat.user)


class WatchContactsApi(RowsApi[WatchContact]):
    """Who is told. Refused without an address of the kind by which they are told (rule_broken). Send a test after a
    change, so that you know that it arrives."""

    model = WatchContact
    ops = {
        "get": Op(
            Action.KEEP_WATCH,
            "list_watch_contacts",
            "Who is told",
            shows=WatchContactShown,
            lists=True,
            orders={"turn": ("turn", "id")},
        ),
        "post": Op(
            Action.KEEP_WATCH,
            "add_watch_contact",
            "One more who is told",
            takes=WatchContactWord,
            shows=WatchContactShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> WatchContact:
        contact = WatchContact(business=self.seat.business)
        set_fields(contact, content)
        return save_watch_contact(contact=contact)


class WatchContactApi(RowApi[WatchContact]):
    """Somebody who is told. Refused (last_on_the_list): taken off while the watch is on and a van would have nobody."""

    model = WatchContact
    ops = {
        "get": Op(Action.KEEP_WATCH, "read_watch_contact", "One who is told", shows=WatchContactShown),
        "patch": Op(
            Action.KEEP_WATCH,
            "change_watch_contact",
            "Change who is told",
            takes=WatchContactWord,
            shows=WatchContactShown,
            changes=True,
        ),
        "delete": Op(
            Action.KEEP_WATCH, "drop_watch_contact", "Take them off the list", status=204, changes=True
        ),
    }

    def change(self, row: WatchContact, content: Said) -> WatchContact:
        set_fields(row, content)
        return save_watch_contact(contact=row)

    def remove(self, row: WatchContact) -> None:
        drop_watch_contact(contact=row)


class TryWatchApi(StepApi[LoneWatch]):
    """Everybody on the list is told for real that this is a test; read the watch to see whether it reached them."""

    model = LoneWatch
    ops = {
        "post": Op(Action.KEEP_WATCH, "try_watch", "Send a test", shows=WatchShown, status=201, repeats=True)
    }

    def row(self) -> LoneWatch:
        return LoneWatch(business=self.seat.business)

    def act(self, row: LoneWatch, content: Said) -> LoneWatch:
        return try_watch(business=self.seat.business, at=self.now, by=self.seat.user)
