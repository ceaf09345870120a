"""An evening's sharpening: one blade or several in one go."""

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import HttpRequest, HttpResponse, HttpResponseBase, HttpResponseRedirect
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.paper.figures import counted
from trimops.web.asked import number_asked
from trimops.web.scoped_page import ScopedPage
from visits.domain.kit.blade_cautions import SHARPENING
from visits.selectors.kit.blades_to_sharpen import BladesToSharpen, blades_to_sharpen
from visits.services.kit.sharpen_blades import sharpen_blades
from visits.web.kit.sharpened_form import SharpenedForm


class SharpenedPage(ScopedPage):
    """The blades of `?van=`, or of the van that the person drives; those whose turn has come are ticked."""

    does = Action.KEEP_KNIVES
    template = "visits/kit/sharpened.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        found = self._found()
        first: dict[str, object] = {
            "at": self.now.astimezone(self.seat.business.zone).replace(second=0, microsecond=0),
            "method": found.usual_method,
            "done_by": self.seat.user.name,
        }
        return self._page(found, SharpenedForm(blades=found.blades, initial=first), 200)

    def post(self, request: HttpRequest) -> HttpResponseBase:
        found = self._found()
        form = SharpenedForm(request.POST, blades=found.blades)
        if not form.is_valid():
            return self._page(found, form, 400)
        try:
            rows = sharpen_blades(word=form.word(), at=self.now, by=self.seat.user)
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self._page(found, form, 409)
        except ValidationError as fault:
            form.add_error(None, fault.messages)
            return self._page(found, form, 400)
        messages.success(request, f"{counted(len(rows), 'new edge')} noted.")
        query = f"?van={found.van.pk}" if found.van else ""
        return HttpResponseRedirect(f"{reverse('blades')}{query}")

    def _found(self) -> BladesToSharpen:
        van = number_asked(self.request.GET.get("van"))
        return blades_to_sharpen(self.scope, self.seat.business, self.now, van, self.seat.user.pk)

    def _page(self, found: BladesToSharpen, form: SharpenedForm, status: int) -> HttpResponse:
        today = local_day(self.now, self.seat.business.zone)
        context = {"found": found, "form": form, "cautions": SHARPENING, "today": today}
        return self.show(context, status=status)
