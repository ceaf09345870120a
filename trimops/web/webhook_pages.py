"""Web addresses of other programs that are told of events."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.outbox.models import WebhookAddress
from trimops.outbox.selectors.webhook_lines import webhook_lines
from trimops.outbox.services.add_webhook import WebhookRefused, add_webhook
from trimops.outbox.services.close_webhook import close_webhook
from trimops.outbox.services.try_webhook import try_webhook
from trimops.web.scoped_page import ScopedPage
from trimops.web.webhook_form import WebhookForm


class WebhooksPage(ScopedPage):
    does = Action.KEEP_WEBHOOKS
    template = "web/webhooks.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(WebhookForm())

    def post(self, request: HttpRequest) -> HttpResponse:
        form = WebhookForm(request.POST)
        if not form.is_valid():
            return self._show(form, status=400)
        try:
            made = add_webhook(business=self.seat.business, wish=form.wish(), at=self.now, by=self.seat.user)
        except WebhookRefused as refused:
            form.add_error(refused.field, refused.message)
            return self._show(form, status=400)
        answer = self._show(WebhookForm(), made)
        answer["Cache-Control"] = "private, no-store"  # because: the secret stands on it
        return answer

    def _show(self, form: WebhookForm, made: WebhookAddress | None = None, status: int = 200) -> HttpResponse:
        return self.show({"lines": webhook_lines(self.scope), "form": form, "made": made}, status=status)


class TryWebhookPage(ScopedPage):
    does = Action.KEEP_WEBHOOKS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        row = self.fetch(WebhookAddress, pk)
        try_webhook(address=row, at=self.now)
        messages.success(
            request, f"A test message goes to {row.name}. Look here in a moment what it answered."
        )
        return redirect("webhooks")


class CloseWebhookPage(ScopedPage):
    does = Action.KEEP_WEBHOOKS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        row = close_webhook(address=self.fetch(WebhookAddress, pk), at=self.now)
        messages.success(request, f"{row.name} is told nothing any more.")
        return redirect("webhooks")
