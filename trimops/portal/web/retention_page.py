"""How long things are kept."""

from typing import TYPE_CHECKING

from django import forms
from django.contrib import messages
from django.core.exceptions import ValidationError
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.portal.models import RetentionRules
from trimops.portal.selectors.retention import books_kept_until, retention_of
from trimops.portal.services.save_retention import save_retention
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm

if TYPE_CHECKING:
    RulesModelForm = forms.ModelForm[RetentionRules]
else:
    # Django's form classes take no type argument at run time.
    RulesModelForm = forms.ModelForm

PERIODS = (
    *("books_years", "trail_years", "bank_files_months", "photos_months", "crush_months"),
    *("herd_lists_months", "messages_months", "links_months", "watches_months", "errands_days"),
)


class RetentionForm(SeenForm, RulesModelForm):
    class Meta:
        model = RetentionRules
        fields = PERIODS


class RetentionPage(ScopedPage):
    """The periods, what goes after each, and what stays whatever they say."""

    does = Action.KEEP_RETENTION
    template = "portal/retention.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(RetentionForm(instance=retention_of(self.scope)))

    @transaction.atomic
    def post(self, request: HttpRequest) -> HttpResponseBase:
        rules = retention_of(self.scope)
        form = RetentionForm(request.POST, instance=rules.locked() if rules.pk else rules)
        if not form.is_valid():
            return self._show(form, form.refused_as)
        try:
            save_retention(
                business=self.seat.business,
                periods={name: form.cleaned_data[name] for name in PERIODS},
                at=self.now,
                by=self.seat.user,
            )
        except ValidationError as fault:
            form.add_error(None, fault)
            return self._show(form, 400)
        messages.success(request, "Kept. From tonight on it goes by these.")
        return redirect("retention")

    def _show(self, form: RetentionForm, status: int = 200) -> HttpResponse:
        rules = retention_of(self.scope)
        until = books_kept_until(self.seat.business, rules, self.now)
        return self.show({"form": form, "rules": rules, "until": until}, status=status)
