"""Electronic ids: the 64-bit code of ISO 11784 and its 15 printed digits.

Layout (bit 1 is sent first and is the highest here): 1 animal flag, 2-4 retagging counter, 5-9 user
information, 10-15 reserved, 16 data block follows, 17-26 country or manufacturer, 27-64 national id. The
split of bits 2 to 15 is from memory; the rest was read (trade-facts 6.1).

The national id has 38 bits, so its largest value is 274 877 906 943: many UK tags, e.g. 284205 700016, do not
fit. An electronic id is therefore never worked out from an ear tag: the two are linked, not equal.
"""

import re
from dataclasses import dataclass

MAX_NATIONAL_ID = 2**38 - 1
TEST_CODE = 999
MANUFACTURER_CODES = range(900, 999)
_JOINTS = re.compile(r"[\s.\-_]+")
_FIELDS = {"retagging": 7, "user_info": 31, "reserved": 63}


class NotAnElectronicId(ValueError):
    """Not an electronic id; the message says what to mend."""


class WrongLength(NotAnElectronicId):
    """Not 15 digits."""


class CountryOutOfRange(NotAnElectronicId):
    """The first three digits are no country or manufacturer code (1 to 999)."""


class NationalIdTooLarge(NotAnElectronicId):
    """The last twelve digits are larger than 38 bits hold."""


class FieldOutOfRange(NotAnElectronicId):
    """One of the small fields has more bits than its place, or the code has more than 64."""


@dataclass(frozen=True)
class ElectronicId:
    """The fields of one transponder code. Raises a named NotAnElectronicId when a field does not fit."""

    country: int
    national_id: int
    is_animal: bool = True
    retagging: int = 0
    user_info: int = 0
    reserved: int = 0
    has_data_block: bool = False

    def __post_init__(self) -> None:
        if not 1 <= self.country <= TEST_CODE:
            raise CountryOutOfRange(f"{self.country:03d} is no country or manufacturer code")
        if not 0 <= self.national_id <= MAX_NATIONAL_ID:
            raise NationalIdTooLarge(f"{self.national_id:012d} is too large: at most {MAX_NATIONAL_ID}")
        for name, largest in _FIELDS.items():
            if not 0 <= getattr(self, name) <= largest:
                raise FieldOutOfRange(f"{name} runs from 0 to {largest}")

    @property
    def printed(self) -> str:
        """The 15 digits, the one form that is kept and compared: 826123450600001."""
        return f"{self.country:03d}{self.national_id:012d}"

    @property
    def display(self) -> str:
        """The 15 digits with a space after the country: 826 123450600001."""
        return f"{self.country:03d} {self.national_id:012d}"

    @property
    def is_by_manufacturer(self) -> bool:
        """Whether the first three digits name a maker (900 to 998), not a country."""
        return self.country in MANUFACTURER_CODES

    @property
    def is_for_tests(self) -> bool:
        return self.country == TEST_CODE


def read_electronic_id(text: str) -> ElectronicId:
    """Read the 15 printed digits, however they were spaced. Raises WrongLength or another NotAnElectronicId."""
    digits = _JOINTS.sub("", text.strip())
    if not re.fullmatch(r"[0-9]{15}", digits):
        raise WrongLength(f"{text.strip()!r} is not an electronic id: 15 digits")
    return ElectronicId(country=int(digits[:3]), national_id=int(digits[3:]))


def pack(eid: ElectronicId) -> int:
    """The 64-bit code, bit 1 highest."""
    return (
        (eid.is_animal << 63)
        | (eid.retagging << 60)
        | (eid.user_info << 55)
        | (eid.reserved << 49)
        | (eid.has_data_block << 48)
        | (eid.country << 38)
        | eid.national_id
    )


def unpack(code: int) -> ElectronicId:
    """The fields of a 64-bit code. Raises FieldOutOfRange beyond 64 bits, CountryOutOfRange for 0 or above 999."""
    if not 0 <= code < 2**64:
        raise FieldOutOfRange("a transponder code has 64 bits")
    return ElectronicId(
        country=code >> 38 & 0x3FF,
        national_id=code & MAX_NATIONAL_ID,
        is_animal=bool(code >> 63),
        retagging=code >> 60 & 0b111,
        user_info=code >> 55 & 0b11111,
        reserved=code >> 49 & 0b111111,
        has_data_block=bool(code >> 48 & 1),
    )


def normalise_electronic_id(text: str) -> str:
    """The 15 printed digits without joints. Raises NotAnElectronicId, whose message says what to mend."""
    return read_electronic_id(text).printed
