"""One day's writings of a realistic mix, sent through the real address, and its rows inserted plainly."""

import io
import time
from dataclasses import dataclass
from random import Random
from uuid import uuid4

from django.db import transaction
from django.test import Client
from PIL import Image

from farms.models import Cow
from tests.factories import make_house, make_kit, under_way
from tests.visits.api.crush_menu import MENU
from tests.visits.api.phone import Phone, put_photo
from visits.models import (
    Block,
    ClawAction,
    CrushWriting,
    Finding,
    Recheck,
    Referral,
    StockMovement,
    Trim,
    TrimmedFoot,
    TrimPhoto,
)

# Of noise a JPEG of this quality takes so many bytes for each dot.
QUALITY, BYTES_A_DOT = 85, 0.78


def noise_of(photo_bytes: int, chance: Random) -> bytes:
    """A JPEG of noise of about so many bytes, which no packing makes smaller."""
    side = max(8, int((photo_bytes / BYTES_A_DOT) ** 0.5))
    out = io.BytesIO()
    dots = chance.randbytes(side * side * 3)
    Image.frombytes("RGB", (side, side), dots).save(out, "JPEG", quality=QUALITY)
    return out.getvalue()


# In an order in which each may point at those before it.
TABLES = (
    *(CrushWriting, Trim, TrimmedFoot, Finding, ClawAction, Referral),
    *(Block, Recheck, StockMovement, TrimPhoto),
)
SHARES = (5, 60, 12, 3, 8, 6, 6)
"""How often each dish of the menu comes up: most cows are trimmed and sound."""


@dataclass(frozen=True)
class PlainInsert:
    rows: int
    seconds: float


class CrushDay:
    def __init__(self, cows: int, photos: int, photo_bytes: int, at_once: int) -> None:
        chance = Random(4)
        house = make_house()
        make_kit(house.business)
        self.scope, self.at_once = house.scope, at_once
        herd = [Cow(business=house.business, farm=house.farm, number=str(1000 + n)) for n in range(cows)]
        Cow.objects.bulk_create(herd)
        client = Client()
        client.force_login(house.trimmer)
        self.phone = Phone(client, under_way(house.farm, house.van))
        self.phone.send()  # what a process does once, it does before the clock runs
        dishes = chance.choices(MENU, SHARES, k=cows)
        for cow, dish in zip(herd, dishes, strict=True):
            self.phone.write({"cow": {"id": cow.pk}, "told_vet": "", "entry": dish.entry})
        records = [writing["record"] for writing in self.phone.waiting[:: max(1, cows // photos)]][:photos]
        picture = noise_of(photo_bytes, chance)
        self.photos = [(record, uuid4(), picture) for record in records]

    def send_cows(self) -> None:
        while self.phone.waiting:
            self.phone.send(self.phone.waiting[: self.at_once])

    def send_photos(self) -> None:
        for record, uid, picture in self.photos:
            assert put_photo(self.phone, record, uid, picture).status_code == 201

    def kept(self) -> tuple[int, int]:
        """Cows, and photos that hang on one."""
        joined = TrimPhoto.objects.within(self.scope).filter(trim__isnull=False)
        return Trim.objects.within(self.scope).count(), joined.count()

    def plain_insert(self) -> PlainInsert:
        """All rows once more, after those that the sending left are gone."""
        kept = {model: self._rows_of(model) for model in TABLES}
        with transaction.atomic():
            for model in reversed(TABLES):
                self._all(model).delete()
        began = time.perf_counter()
        with transaction.atomic():
            for model, rows in kept.items():
                model.objects.bulk_create(rows)
        seconds = time.perf_counter() - began
        return PlainInsert(sum(len(rows) for rows in kept.values()), seconds)

    def _all(self, model):
        return model.objects.within(self.scope)

    def _rows_of(self, model) -> list:
        return list(self._all(model).order_by("pk"))
