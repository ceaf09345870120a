"""A telephone number as somebody wrote it, made into the one that a text message goes to."""

import phonenumbers
from phonenumbers import PhoneNumberType

TAKES_TEXTS = frozenset({PhoneNumberType.MOBILE, PhoneNumberType.FIXED_LINE_OR_MOBILE})


class NoSuchNumber(ValueError):
    """The text says what is wrong with it, for the person who wrote it."""


def mobile_number(written: str, country: str) -> str:
    """E.164 ("+447700900123"); a number without its country's code is one of `country` (two letters).

    NoSuchNumber: it cannot be one, or it is one that takes no text messages. By the numbering plans of Google's
    libphonenumber; a number of the right length that they do not know is taken, since they lag behind the countries'.
    """
    try:
        number = phonenumbers.parse(written, country.upper() or None)
    except phonenumbers.NumberParseException:
        raise NoSuchNumber("This is no telephone number. Write it like +44 7700 900123.") from None
    is_known = phonenumbers.is_valid_number(number)
    if not is_known and not _has_the_length_of_a_mobile(number):
        raise NoSuchNumber(
            "There is no such telephone number. Look at its digits, and begin with the country (+44)."
        )
    if is_known and phonenumbers.number_type(number) not in TAKES_TEXTS:
        raise NoSuchNumber("This is no mobile number, so it takes no text messages.")
    return str(phonenumbers.format_number(number, phonenumbers.PhoneNumberFormat.E164))


def _has_the_length_of_a_mobile(number: phonenumbers.PhoneNumber) -> bool:
    found = phonenumbers.is_possible_number_for_type_with_reason(number, PhoneNumberType.MOBILE)
    return found == phonenumbers.ValidationResult.IS_POSSIBLE
