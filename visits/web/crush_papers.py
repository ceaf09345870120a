"""What the phone takes along to the crush: the papers of one visit, and which visits there are."""

from django.http import HttpRequest, JsonResponse
from django.utils.decorators import method_decorator
from django.views.decorators.csrf import ensure_csrf_cookie
from django.views.decorators.gzip import gzip_page

from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.web.scoped_page import ScopedPage
from visits.models import Visit
from visits.selectors.crush_days import crush_days
from visits.selectors.crush_papers import crush_papers


# because: a herd of 600 with its past is most of a megabyte, and a yard has little signal
@method_decorator(gzip_page, name="dispatch")
@method_decorator(ensure_csrf_cookie, name="dispatch")
class CrushPapersPage(ScopedPage):
    """Everything the day needs, as JSON. The cookie lets the phone send what it kept."""

    does = Action.WORK_AT_CRUSH

    def get(self, request: HttpRequest, pk: int) -> JsonResponse:
        visit = self.fetch(Visit, pk, "farm", "business", "van")
        return _fresh(crush_papers(self.scope, visit, by=self.seat.user, now=self.now))


@method_decorator(ensure_csrf_cookie, name="dispatch")
class CrushTodayPage(ScopedPage):
    """{"fetched_at", "today", "visits": [...]}: those of today and tomorrow, see `crush_days`."""

    does = Action.WORK_AT_CRUSH

    def get(self, request: HttpRequest) -> JsonResponse:
        zone = self.seat.business.zone
        visits = crush_days(self.scope, by=self.seat.user, now=self.now, zone=zone)
        today = local_day(self.now, zone)
        return _fresh({"fetched_at": self.now.isoformat(), "today": today.isoformat(), "visits": visits})


def _fresh(content: dict[str, object]) -> JsonResponse:
    """Never kept by the browser: the phone keeps it itself, where it can tell how old it is."""
    return JsonResponse(content, headers={"Cache-Control": "no-store"})
