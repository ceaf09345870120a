"""The watch over lone work: on or off, whom to tell, a test, and what came of each."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.kernel.errors import FieldRefused
from trimops.outbox.domain.outgoing_states import Channel
from trimops.web.scoped_page import ScopedPage
from visits.domain.lone_watch.watch_cautions import PLAINLY
from visits.models import LoneWatch, WatchContact, WatchRules
from visits.selectors.lone_watch.watch_view import (
    calls_of,
    events_of,
    listed_contacts,
    rules_of,
    watches_before,
    watches_now,
)
from visits.selectors.lone_watch.ways_out import ways_out
from visits.selectors.lone_watch.why_nobody_is_told import why_nobody_is_told
from visits.services.lone_watch.check_in import check_in
from visits.services.lone_watch.save_watch_contact import drop_watch_contact, save_watch_contact
from visits.services.lone_watch.save_watch_rules import CannotTellAnybody, save_watch_rules
from visits.services.lone_watch.try_watch import try_watch
from visits.web.lone_watch.watch_forms import WatchContactForm, WatchRulesForm


class WatchPage(ScopedPage):
    """One page for all of it; its form keeps the rules."""

    does = Action.KEEP_WATCH
    template = "visits/watch/watch.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        row = self._rules()
        return self._show(row, self._form(row), 200)

    @transaction.atomic
    def post(self, request: HttpRequest) -> HttpResponseBase:
        rules = self._rules()
        form = self._form(rules.locked() if rules.pk else rules, request.POST)
        if not form.is_valid():
            return self._show(self._rules(), form, form.refused_as)
        try:
            kept = save_watch_rules(
                business=self.seat.business, wish=form.wish(), at=self.now, by=self.seat.user
            )
        except CannotTellAnybody as broken:
            form.add_error("is_on", broken.message)
            return self._show(self._rules(), form, 409)
        messages.success(request, "The watch is on." if kept.is_on else "The watch is off: nobody looks out.")
        return redirect("watch")

    def _form(self, row: WatchRules, data: QueryDict | None = None) -> WatchRulesForm:
        names = ("is_on", "watches_plan", "grace_minutes", "answer_minutes", "repeat_minutes")
        return WatchRulesForm(data, initial={name: getattr(row, name) for name in names})

    def _rules(self) -> WatchRules:
        return rules_of(self.scope) or WatchRules(business=self.seat.business)

    def _show(self, row: WatchRules, form: WatchRulesForm, status: int) -> HttpResponse:
        context = {
            "rules": row,
            "form": form,
            "contacts": listed_contacts(self.scope),
            "watches_now": watches_now(self.scope),
            "before": watches_before(self.scope),
            "why_not": why_nobody_is_told(self.scope, self.now),
            "plainly": PLAINLY,
            "asks_by_sms": Channel.SMS in ways_out(),
        }
        return self.show(context, status=status)


class WatchTryPage(ScopedPage):
    """The test button."""

    does = Action.KEEP_WATCH

    def post(self, request: HttpRequest) -> HttpResponseBase:
        watch = try_watch(business=self.seat.business, at=self.now, by=self.seat.user)
        messages.success(request, "A test goes to everybody on the list. Look here whether it reached them.")
        return redirect("lone_watch", watch.pk)


class WatchContactPage(ScopedPage):
    """Somebody new on the list, or one who is mended or taken off."""

    does = Action.KEEP_WATCH
    template = "visits/watch/contact.html"

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        return self._show(WatchContactForm(instance=self._contact(pk), scope=self.scope), 200)

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponseBase:
        contact = self._contact(pk)
        contact = contact.locked() if contact.pk else contact
        if pk and request.POST.get("act") == "drop":
            drop_watch_contact(contact=contact)
            messages.success(request, f"{contact.name} is not told any more.")
            return redirect("watch")
        form = WatchContactForm(request.POST, instance=contact, scope=self.scope)
        if not form.is_valid():
            return self._show(form, form.refused_as)
        try:
            save_watch_contact(contact=form.instance)
        except FieldRefused as refused:
            form.add_error(refused.field, refused.message)
            return self._show(form, 400)
        messages.success(request, f"{contact.name} is on the list. Send a test, so that you know it arrives.")
        return redirect("watch")

    def _contact(self, pk: int | None) -> WatchContact:
        return self.fetch(WatchContact, pk) if pk else WatchContact(business=self.seat.business)

    def _show(self, form: WatchContactForm, status: int) -> HttpResponse:
        return self.show({"form": form, "contact": form.instance}, status=status)


class LoneWatchPage(ScopedPage):
    """One watch: what happened, who was told, and whether it went."""

    does = Action.KEEP_WATCH
    template = "visits/watch/lone_watch.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        watch = self.fetch(LoneWatch, pk, "trimmer", "visit__farm")
        return self.show({"it": watch, "events": events_of(watch), "calls": calls_of(watch)})


class WatchWellPage(ScopedPage):
    """The button of the line that asks: I am well."""

    does = Action.KEEP_WATCH

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        watch = self.fetch(LoneWatch, pk)
        is_done = request.POST.get("act") == "done"
        check_in(watch=watch, is_done=is_done, at=self.now, who=self.seat.user.name)
        words = (
            "Good. The watch over this visit is over."
            if is_done
            else "Good. You are asked again in 30 minutes."
        )
        messages.success(request, words)
        return redirect("lone_watch", watch.pk)
