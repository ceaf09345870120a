"""Calendar addresses: who has one, making one, closing one; and the feed itself."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.urls import reverse
from django.utils import timezone
from django.utils.decorators import method_decorator
from django.views import View
from django.views.decorators.http import conditional_page

from trimops.accounts.roles import Role
from trimops.kernel.secret_link import hash_of
from trimops.tenancy.unscoped import unscoped
from trimops.web.scoped_page import ScopedPage
from visits.documents.calendar_feed import calendar_feed
from visits.models import CalendarAddress
from visits.selectors.calendar_content import calendar_content, may_still_be_read
from visits.services.make_calendar_address import make_calendar_address
from visits.services.revoke_calendar_address import revoke_calendar_address
from visits.web.forms import CalendarForm

DIARY = frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})


class CalendarPage(ScopedPage):
    roles = DIARY
    template = "visits/calendar.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(CalendarForm(scope=self.scope))

    def post(self, request: HttpRequest) -> HttpResponse:
        form = CalendarForm(request.POST, scope=self.scope)
        if not form.is_valid():
            return self._show(form, status=400)
        made = make_calendar_address(
            business=self.seat.business,
            name=form.cleaned_data["name"],
            at=self.now,
            by=self.seat.user,
            shows=form.cleaned_data["van"],
        )
        address = request.build_absolute_uri(reverse("calendar_feed", args=[made.secret]))
        return self._show(CalendarForm(scope=self.scope), address)

    def _show(self, form: CalendarForm, address: str = "", status: int = 200) -> HttpResponse:
        rows = (
            CalendarAddress.objects.within(self.scope).filter(revoked_at__isnull=True).select_related("van")
        )
        return self.show({"addresses": rows, "form": form, "new_address": address}, status=status)


class RevokeCalendarPage(ScopedPage):
    roles = DIARY

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        revoke_calendar_address(address=self.fetch(CalendarAddress, pk), at=self.now)
        messages.success(request, "The address is closed; whoever used it sees nothing any more.")
        return redirect("calendar")


@method_decorator(conditional_page, name="dispatch")
class CalendarFeed(View):
    """Open to whoever holds the secret; an unknown or closed one answers 404. ETag and 304 by Django."""

    def get(self, request: HttpRequest, secret: str) -> HttpResponse:
        with unscoped("the secret alone says whose calendar it is"):
            rows = CalendarAddress.objects.filter(secret_hash=hash_of(secret), revoked_at__isnull=True)
            address = rows.select_related("business", "van", "farm").first()
        if address is None or not may_still_be_read(address):
            raise Http404
        feed = calendar_feed(calendar_content(address, timezone.now()))
        answer = HttpResponse(feed, content_type="text/calendar; charset=utf-8")
        answer["Cache-Control"] = "private"
        answer["X-Robots-Tag"] = "noindex"
        return answer
