"""The creditor reference of an invoice (ISO 11649): what the bank carries back with the payment, self-checking."""

from stdnum.iso7064 import mod_97_10

LONGEST = 21


def creditor_reference(number: str) -> str:
    """ "RF" + two check digits + the letters and digits of the number: INV-2026-0042 gives RFxxINV20260042.

    The check digits are those of ISO 7064 mod 97-10 over number + "RF". Signs and blanks fall away, letters become
    capitals. ValueError if no letter or digit of ASCII is left, or more than 21.
    """
    kept = "".join(sign for sign in number.upper() if sign.isascii() and sign.isalnum())
    if not kept:
        raise ValueError("a creditor reference needs at least one letter or digit")
    if len(kept) > LONGEST:
        raise ValueError(f"a creditor reference holds at most {LONGEST} letters and digits, not {len(kept)}")
    return f"RF{mod_97_10.calc_check_digits(f'{kept}RF')}{kept}"


def reads_as_creditor_reference(text: str) -> str | None:
    """The reference without blanks, if its check digits hold; else None. Banks print it in groups of four."""
    packed = "".join(text.split()).upper()
    sound = (
        packed.startswith("RF") and 5 <= len(packed) <= LONGEST + 4 and packed.isascii() and packed.isalnum()
    )
    if not sound or not packed[2:4].isdigit():
        return None
    return packed if mod_97_10.is_valid(packed[4:] + packed[:4]) else None
