"""A photo of a foot, for the business and for the farm whose cow it is."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from trimops.kernel.errors import NotFound
from trimops.web.file_answer import picture_answer
from trimops.web.scoped_page import ScopedPage
from visits.models import Visit
from visits.selectors.trim_photos import photo_of

A_YEAR = 365 * 24 * 3600


class TrimPhotoPage(ScopedPage):
    """The picture as it is kept. It never changes, so a browser may keep it; nobody between may."""

    does = Action.SEE_COWS

    def get(self, request: HttpRequest, pk: int, uid: UUID) -> HttpResponse:
        photo = photo_of(self.scope, self.fetch(Visit, pk), uid)
        if photo is None:
            raise NotFound("There is nothing at this address.")
        answer = picture_answer(bytes(photo.picture))
        answer["Cache-Control"] = f"private, max-age={A_YEAR}, immutable"
        return answer
