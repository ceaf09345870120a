"""Where a phone at the crush sends the photos it took."""

from uuid import UUID

from drf_spectacular.types import OpenApiTypes
from rest_framework.request import Request
from rest_framework.response import Response

from trimops.accounts.actions import Action
from trimops.api.op import Op
from trimops.api.raw_body import FileParser
from trimops.api.view import Api
from trimops.web.refusals import Malformed, TooLarge
from trimops.web.scoped_api import ScopedApi
from visits.api.crush_words import PhotoKeptShown
from visits.api.described_word import MOMENT, UID, Described
from visits.domain.crush_merge import Clocks, place
from visits.domain.feet import Foot
from visits.domain.jpeg_picture import MOST_PICTURE_BYTES, picture_fault
from visits.domain.json_fields import FieldFault, JsonFields
from visits.models import Visit
from visits.services.save_photo import PhotoUnreadable, SentPhoto, save_photo


class JpegParser(FileParser):
    """Read no further than one byte beyond what is taken."""

    media_type = "image/jpeg"
    most = MOST_PICTURE_BYTES + 1


class CrushPhotoApi(Api):
    """Keeps a JPEG of at most 256 kB, taken of a cow (`record`, as her writing names it) and one of her feet. Safe
    to repeat without an Idempotency-Key: the address names the photo, and the first one sent stays (200). `sent_at`
    is for a phone whose clock is off: only the time between the two counts then."""

    parser_classes = [JpegParser]
    also_answers = (200,)
    ops = {
        "put": Op(
            Action.WORK_AT_CRUSH,
            "send_photo",
            "Send a photo",
            takes=OpenApiTypes.BINARY,  # type: ignore[arg-type]  # because: a picture is no set of fields
            shows=PhotoKeptShown,
            status=201,
            query={
                "record": Described(UID, is_needed=True),
                "foot": Described({"type": "string", "enum": [foot.value for foot in Foot]}),
                "taken_at": Described(MOMENT, is_needed=True),
                "sent_at": Described(MOMENT),
            },
        )
    }

    def initial(self, request: Request, *args: object, **kwargs: object) -> None:
        # because: the query is read together with the picture, and its faults are named as phones know them
        ScopedApi.initial(self, request, *args, **kwargs)
        self.op = self.ops["put"]

    def put(self, request: Request, pk: int, uid: UUID) -> Response:
        visit = self.fetch(Visit, pk, "business")
        sent = self._photo(request, uid)
        try:
            photo, is_new = save_photo(visit=visit, photo=sent, at=self.now, by=self.seat.user)
        except PhotoUnreadable as fault:
            raise Malformed([("body", fault.message)]) from fault
        told = {"uid": str(photo.uid), "size": photo.size, "sha256": photo.sha256}
        return Response(told, status=201 if is_new else 200)

    def _photo(self, request: Request, uid: UUID) -> SentPhoto:
        if int(request.META.get("CONTENT_LENGTH") or 0) > MOST_PICTURE_BYTES:
            raise TooLarge(f"A photo has at most {MOST_PICTURE_BYTES} bytes.")
        faults: list[FieldFault] = []
        read = JsonFields(request.query_params.dict(), "", faults)
        taken_at = read.needed_instant("taken_at")
        clocks = Clocks(taken_at, read.instant("sent_at") or self.now, None, self.now)
        picture = request.data.get("file", b"") if isinstance(request.data, dict) else b""
        photo = SentPhoto(uid, read.needed_uid("record"), read.code("foot", Foot), place(clocks), picture)
        read.close()
        if fault := picture_fault(picture):
            faults.append(FieldFault("body", fault))
        if faults:
            raise Malformed([(fault.field, fault.reason) for fault in faults])
        return photo
