"""Where a phone at the crush sends the photos it took."""

from collections.abc import Mapping
from typing import IO
from uuid import UUID

from rest_framework.parsers import BaseParser
from rest_framework.request import Request
from rest_framework.response import Response

from trimops.accounts.roles import AT_THE_CRUSH
from trimops.web.refusals import Malformed, TooLarge
from trimops.web.scoped_api import ScopedApi
from visits.domain.crush_merge import Clocks, place
from visits.domain.feet import Foot
from visits.domain.jpeg_picture import MOST_PICTURE_BYTES, picture_fault
from visits.domain.json_fields import FieldFault, JsonFields
from visits.models import Visit
from visits.services.save_photo import SentPhoto, save_photo


class JpegParser(BaseParser):
    """The body as it came, read no further than one byte beyond what is taken."""

    media_type = "image/jpeg"

    def parse(
        self,
        stream: IO[bytes],
        media_type: str | None = None,
        parser_context: Mapping[str, object] | None = None,
    ) -> dict[str, bytes]:
        return {"picture": stream.read(MOST_PICTURE_BYTES + 1)}


class CrushPhotoApi(ScopedApi):
    """PUT a JPEG of at most 256 kB with `record`, `foot`, `taken_at` and, for a phone whose clock is off, `sent_at`."""

    roles = AT_THE_CRUSH
    parser_classes = [JpegParser]

    def put(self, request: Request, pk: int, uid: UUID) -> Response:
        visit = self.fetch(Visit, pk, "business")
        photo, is_new = save_photo(
            visit=visit, photo=self._photo(request, uid), at=self.now, by=self.seat.user
        )
        told = {"uid": str(photo.uid), "size": photo.size, "sha256": photo.sha256}
        return Response(told, status=201 if is_new else 200)

    def _photo(self, request: Request, uid: UUID) -> SentPhoto:
        if int(request.META.get("CONTENT_LENGTH") or 0) > MOST_PICTURE_BYTES:
            raise TooLarge(f"A photo has at most {MOST_PICTURE_BYTES} bytes.")
        faults: list[FieldFault] = []
        read = JsonFields(request.query_params.dict(), "", faults)
        taken_at = read.needed_instant("taken_at")
        clocks = Clocks(taken_at, read.instant("sent_at") or self.now, None, self.now)
        picture = request.data.get("picture", b"") if isinstance(request.data, dict) else b""
        photo = SentPhoto(uid, read.needed_uid("record"), read.code("foot", Foot), place(clocks), picture)
        read.close()
        if fault := picture_fault(picture):
            faults.append(FieldFault("body", fault))
        if faults:
            raise Malformed([(fault.field, fault.reason) for fault in faults])
        return photo
