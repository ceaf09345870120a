"""The several ways one cow is known."""

from enum import StrEnum


class IdentityKind(StrEnum):
    """What kind of number or mark an identity is. A cow has several; a trimmer reads whatever is nearest."""

    OFFICIAL_TAG = "official_tag"
    MANAGEMENT_NUMBER = "management_number"
    ELECTRONIC_ID = "electronic_id"
    FREEZE_BRAND = "freeze_brand"
    COLLAR = "collar"

    @property
    def label(self) -> str:
        return _LABELS[self]

    @property
    def is_unique_in_the_world(self) -> bool:
        """Official tags and electronic ids name one animal anywhere; the others one on a farm, if that."""
        return self in (IdentityKind.OFFICIAL_TAG, IdentityKind.ELECTRONIC_ID)


_LABELS = {
    IdentityKind.OFFICIAL_TAG: "Official ear tag",
    IdentityKind.MANAGEMENT_NUMBER: "Number",
    IdentityKind.ELECTRONIC_ID: "Electronic id",
    IdentityKind.FREEZE_BRAND: "Freeze brand",
    IdentityKind.COLLAR: "Collar",
}
