"""A person of a farm ends the messages about visits, by the link in one of them: no account, no sign-in."""

from typing import ClassVar

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views import View
from django.views.decorators.debug import sensitive_variables

from farms.models import Contact
from farms.selectors.stop_link import contact_of_link
from farms.services.opt_out import opt_in, opt_out
from trimops.web.not_kept import NOT_KEPT


class StopMessagesPage(View):
    """Asks first, since programs that look through mails open what they find; then a button ends them, or undoes it."""

    template: ClassVar[str] = "farms/stop_messages.html"

    @sensitive_variables("secret", "kwargs")
    def dispatch(self, request: HttpRequest, *args: object, **kwargs: object) -> HttpResponseBase:
        self.secret = str(kwargs.pop("secret"))
        found = contact_of_link(self.secret)
        answer = self._answer(request, found)
        for name, value in NOT_KEPT.items():
            answer[name] = value
        return answer

    def _answer(self, request: HttpRequest, found: Contact | None) -> HttpResponseBase:
        if found is None:
            return render(request, "farms/stop_ended.html", status=404)
        self.contact: Contact = found
        return super().dispatch(request)

    def get(self, request: HttpRequest) -> HttpResponse:
        contact = self.contact
        context = {"business": contact.business, "contact": contact, "farm": contact.farm}
        return render(request, self.template, context)

    def post(self, request: HttpRequest) -> HttpResponseBase:
        if "again" in request.POST:
            opt_in(contact=self.contact)
        else:
            opt_out(contact=self.contact, at=timezone.now())
        return redirect("stop_messages", self.secret)
