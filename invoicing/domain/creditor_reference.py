"""The creditor reference of an invoice (ISO 11649): what the bank carries back with the payment, self-checking."""

from stdnum.iso7064 import mod_97_10

LONGEST = 21


def creditor_reference(number: str) -> str:
    """ "RF" + two check digits + the letters and digits of the number: INV-2026-0042 gives RFxxINV20260042.

    The check digits are those of ISO 7064 mod 97-10 over number + "RF". Signs and blanks fall away, letters become
    capitals. ValueError if no letter or digit of ASCII is left, or more than 21.
    """
    kept = letters_and_digits(number)
    if not kept:
        raise ValueError("a creditor reference needs at least one letter or digit")
    if len(kept) > LONGEST:
        raise ValueError(f"a creditor reference holds at most {LONGEST} letters and digits, not {len(kept)}")
    return f"RF{mod_97_10.calc_check_digits(f'{kept}RF')}{kept}"


def letters_and_digits(text: str) -> str:
    """What a reference keeps of a number: the letters and digits of ASCII, in capitals."""
    return "".join(sign for sign in text.upper() if sign.isascii() and sign.isalnum())
