"""The feed itself, behind its secret."""

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseBase
from django.utils import timezone
from django.utils.cache import get_conditional_response
from django.utils.decorators import method_decorator
from django.utils.http import http_date
from django.views import View
from django.views.decorators.gzip import gzip_page

from visits.documents.calendar_feed import calendar_feed, feed_changed_at
from visits.selectors.calendar_content import CalendarAnswer, calendar_answer

HEADERS = {"Cache-Control": "private, no-cache", "X-Robots-Tag": "noindex", "Vary": "Accept-Encoding"}


@method_decorator(gzip_page, name="dispatch")
class CalendarFeed(View):
    """Open to whoever holds the secret; an unknown or closed one answers 404. Who has the newest feed costs one query.

    Only the tag decides who has it (RFC 9110, section 13.1.2): a day off taken away leaves no date behind, and two
    changes may lie within one second, so If-Modified-Since alone is answered with the whole feed.
    """

    def get(self, request: HttpRequest, secret: str) -> HttpResponseBase:
        found = calendar_answer(secret, timezone.now())
        if found is None:
            raise Http404
        answer = get_conditional_response(request, etag=found.etag) or _whole(found)
        for name, value in {**HEADERS, "ETag": found.etag}.items():
            answer.headers[name] = value
        return answer


def _whole(found: CalendarAnswer) -> HttpResponse:
    feed = found.content()
    answer = HttpResponse(calendar_feed(feed), content_type="text/calendar; charset=utf-8")
    if changed_at := feed_changed_at(feed):
        answer.headers["Last-Modified"] = http_date(changed_at.timestamp())
    return answer
