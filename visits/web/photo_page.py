"""A photo of a foot, for the business and for the farm whose cow it is."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse

from trimops.accounts.roles import EVERYONE
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage
from visits.models import Visit
from visits.selectors.trim_photos import photo_of

A_YEAR = 365 * 24 * 3600


class TrimPhotoPage(ScopedPage):
    """The picture as it came. It never changes, so a browser may keep it; nobody between may."""

    roles = EVERYONE

    def get(self, request: HttpRequest, pk: int, uid: UUID) -> HttpResponse:
        photo = photo_of(self.scope, self.fetch(Visit, pk), uid)
        if photo is None:
            raise NotFound("There is nothing at this address.")
        answer = HttpResponse(bytes(photo.picture), content_type="image/jpeg")
        answer["Cache-Control"] = f"private, max-age={A_YEAR}, immutable"
        return answer
