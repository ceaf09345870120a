"""What somebody sees who was asked or told: by a secret link, without signing in."""

from datetime import datetime

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views import View
from django.views.decorators.debug import sensitive_variables

from trimops.web.not_kept import NOT_KEPT
from visits.domain.lone_watch.watch_cautions import NO_REPLACEMENT
from visits.domain.lone_watch.watch_states import CallAnswer
from visits.domain.lone_watch.watch_words import Missed, first_lines, place_lines, story_lines
from visits.models import WatchCall
from visits.selectors.lone_watch.call_behind_link import call_behind
from visits.selectors.lone_watch.watch_facts import missed_of
from visits.services.lone_watch.answer_call import OF_THE_TRIMMER, answer_call

OF_OTHERS = (CallAnswer.TAKES, CallAnswer.FOUND, CallAnswer.CANNOT)
ANSWERS = {answer.value: answer for answer in CallAnswer}


class WatchCallPage(View):
    """GET tells, POST answers. A link is only opened by a mail scanner; the button is pressed by a person."""

    @sensitive_variables("secret")
    def dispatch(self, request: HttpRequest, *args: object, **kwargs: object) -> HttpResponseBase:
        self.secret = str(kwargs.pop("secret"))
        self.now: datetime = timezone.now()
        found = call_behind(self.secret, self.now)
        if found is None:
            answer: HttpResponseBase = render(request, "visits/watch/call_ended.html", status=404)
        else:
            self.call: WatchCall = found
            with timezone.override(found.business.zone):
                answer = super().dispatch(request)
        for name, value in NOT_KEPT.items():
            answer[name] = value
        return answer

    def get(self, request: HttpRequest) -> HttpResponse:
        return render(request, self._template(), self._context())

    def post(self, request: HttpRequest) -> HttpResponseBase:
        answer = ANSWERS.get(request.POST.get("answer", ""))
        if answer is None:
            return render(request, self._template(), self._context(), status=400)
        answer_call(call=self.call, answer=answer, at=self.now)
        return redirect("watch_by_link", self.secret)

    def _template(self) -> str:
        if self.call.watch.is_test:
            return "visits/watch/call_test.html"
        return "visits/watch/call_trimmer.html" if self.call.is_trimmer else "visits/watch/call_other.html"

    def _context(self) -> dict[str, object]:
        watch = self.call.watch
        context = {"business": self.call.business, "call": self.call, "it": watch, "plainly": NO_REPLACEMENT}
        if watch.is_test:
            return {**context, "answers": [CallAnswer.TAKES]}
        missed = missed_of(watch, self.now)
        answers = sorted(OF_THE_TRIMMER, reverse=True) if self.call.is_trimmer else OF_OTHERS
        return {**context, "missed": missed, "answers": answers, **_lines(missed)}


def _lines(missed: Missed) -> dict[str, object]:
    return {"first": first_lines(missed), "where": place_lines(missed.place), "story": story_lines(missed)}
