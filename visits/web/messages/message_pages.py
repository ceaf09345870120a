"""What farms are told by themselves: which messages, in which words, at which hours."""

from django.contrib import messages
from django.db import transaction
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect
from django.urls import reverse

from farms.domain.told_by import FALLBACK, LANGUAGES
from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.domain.messages.message_kinds import WHAT_PLACES_HOLD, MessageKind
from visits.models import MessageText
from visits.selectors.messages.message_preview import message_preview
from visits.selectors.messages.rules_in_use import rules_of
from visits.selectors.messages.texts_in_use import texts_of
from visits.selectors.messages.who_is_told import who_is_told
from visits.services.messages.save_message_rules import (
    RuleMakesNoSense,
    locked_rules,
    save_message_rules,
    switch_message,
)
from visits.services.messages.save_message_text import TextWord, lock_texts, save_message_text
from visits.web.messages.message_forms import LanguageForm, MessageRulesForm, MessageTextForm


class MessagesPage(ScopedPage):
    """Each kind, whether it goes; the hours."""

    does = Action.KEEP_MESSAGES
    template = "visits/messages/messages.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(MessageRulesForm.of(rules_of(self.seat.business)))

    @transaction.atomic
    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = MessageRulesForm.of(locked_rules(self.seat.business), request.POST)
        if form.is_valid():
            try:
                save_message_rules(business=self.seat.business, word=form.word(), at=self.now)
            except RuleMakesNoSense as fault:
                form.add_error(fault.field, fault.message)
            else:
                messages.success(request, "The hours are kept.")
                return redirect("messages")
        return self._show(form, form.refused_as)

    def _show(self, form: MessageRulesForm, status: int = 200) -> HttpResponse:
        rules, texts = rules_of(self.seat.business), texts_of(self.scope)
        kinds = [
            {
                "kind": kind,
                "is_on": rules.is_on(kind),
                "own": [LANGUAGES[language] for of, language in texts.own if of == kind.value],
            }
            for kind in MessageKind
        ]
        on = [each for each in kinds if each["is_on"]]
        told = who_is_told(self.scope)
        return self.show({"form": form, "kinds": kinds, "on": on, "told": told}, status=status)


class MessagePage(ScopedPage):
    """One kind: how it reads on the next visit, its text in each language, and the switch."""

    does = Action.KEEP_MESSAGES
    template = "visits/messages/message.html"

    def get(self, request: HttpRequest, kind: str) -> HttpResponse:
        self._ask(kind)
        return self._show(self._form())

    @transaction.atomic
    def post(self, request: HttpRequest, kind: str) -> HttpResponseBase:
        self._ask(kind)
        lock_texts(self.scope, self.kind)
        if (switch := request.POST.get("switch")) in ("on", "off"):
            return self._switch(switch == "on")
        form = self._form(request.POST)
        if not form.is_valid():
            return self._show(form, form.refused_as)
        if "look" in request.POST:
            return self._show(form)
        save_message_text(business=self.seat.business, word=TextWord(self.kind, self.language, form.text()))
        messages.success(request, f"The text is kept, in {LANGUAGES[self.language]}.")
        return redirect(f"{reverse('message', args=[kind])}?language={self.language}")

    def _ask(self, kind: str) -> None:
        try:
            self.kind = MessageKind(kind)
        except ValueError:
            raise Http404 from None
        asked = LanguageForm(self.request.GET)
        self.language: str = asked.cleaned_data["language"] if asked.is_valid() else FALLBACK

    def _form(self, data: QueryDict | None = None) -> MessageTextForm:
        in_use = texts_of(self.scope).in_language(self.kind, self.language)
        return MessageTextForm(data, kind=self.kind, initial=vars(in_use))

    def _switch(self, on: bool) -> HttpResponseBase:
        switch_message(business=self.seat.business, kind=self.kind, on=on, at=self.now)
        done = "goes by itself from now on" if on else "goes no more by itself"
        messages.success(self.request, f"“{self.kind.label}” {done}.")
        return redirect("message", self.kind.value)

    def _show(self, form: MessageTextForm, status: int = 200) -> HttpResponse:
        texts, business = texts_of(self.scope), self.seat.business
        preview = None
        if not form.errors:
            if form.is_bound:
                own = MessageText(kind=self.kind.value, language=self.language, **vars(form.text()))
                texts = texts.with_row(own)
            preview = message_preview(business, self.kind, self.language, texts, self.now)
        words = {
            "kind": self.kind,
            "is_on": rules_of(business).is_on(self.kind),
            "form": form,
            "preview": preview,
            "is_new": form.is_bound and not form.errors,
            "places": [(f"{{{name}}}", WHAT_PLACES_HOLD[name]) for name in self.kind.places],
            "told": who_is_told(self.scope),
        }
        languages = {"languages": LANGUAGES.items(), "language": self.language}
        return self.show({**words, **languages}, status=status)
