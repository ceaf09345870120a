"""Photos of feet, taken at the crush."""

from django.http import HttpResponse

from trimops.accounts.actions import Action
from trimops.api.kinds import FileApi, RowsApi
from trimops.api.op import Op
from trimops.api.rows import RowContent
from trimops.kernel.errors import NotFound
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.file_answer import picture_answer
from visits.models import TrimPhoto, Visit
from visits.selectors.trim_photos import photo_of


class PhotoShown(RowContent):
    """A picture without its bytes; `trim` is null until the cow herself has arrived from the phone."""

    class Meta:
        model = TrimPhoto
        fields = ["id", "uid", "visit", "trim", "foot", "taken_at", "received_at", "size", "sha256"]


class PhotosApi(RowsApi[TrimPhoto]):
    """The photos of a visit. A farm client does not see those of a cow that was taken back."""

    model = TrimPhoto
    ops = {"get": Op(Action.SEE_COWS, "list_photos", "The photos of a visit", shows=PhotoShown, lists=True)}

    def rows(self) -> TenantQuerySet[TrimPhoto]:
        rows = super().rows().filter(visit=self.fetch(Visit, self.kwargs["pk"])).defer("picture")
        if self.scope.is_farm_client:
            rows = rows.filter(trim__isnull=False, trim__taken_back_at__isnull=True)
        return rows


class PhotoFileApi(FileApi):
    """One picture as it came from the phone, byte by byte; it never changes."""

    ops = {"get": Op(Action.SEE_COWS, "fetch_photo", "One photo", media="image/jpeg")}

    def file(self) -> HttpResponse:
        photo = photo_of(self.scope, self.fetch(Visit, self.kwargs["pk"]), self.kwargs["uid"])
        if photo is None:
            raise NotFound("There is nothing at this address.")
        answer = picture_answer(bytes(photo.picture))
        answer["Cache-Control"] = "private, max-age=31536000, immutable"
        return answer
