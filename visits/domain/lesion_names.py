"""Reading lesion codes and dermatitis stages that somebody else wrote.

Single letters are those of the International Lameness Committee (H, U, T, W, Z, V, E, D, F, I seen in print;
K, X, G, C and the letter W from memory; trade-facts 1.3). Some older papers write M5 for healthy skin (from
memory).
"""

from visits.domain.lesions import LESIONS, DDStage, LesionCode, LesionGroup

ILC_LETTERS: dict[str, LesionCode] = {
    "H": LesionCode.SH,
    "T": LesionCode.TU,
    "W": LesionCode.WL,
    "Z": LesionCode.TS,
    "V": LesionCode.HFV,
    "E": LesionCode.HHE,
    "D": LesionCode.DD,
    "F": LesionCode.IP,
    "I": LesionCode.ID,
    "K": LesionCode.IH,
    "X": LesionCode.HFA,
    "G": LesionCode.HFH,
    "C": LesionCode.CC,
}
ILC_ULCER = LesionCode.SU


class UnknownLesion(ValueError):
    """No lesion goes by that code."""


class UnknownStage(ValueError):
    """Digital dermatitis has no such stage."""


def lesion_code(text: str, *, ilc_letters: bool = False) -> LesionCode:
    """The atlas code for what was written, whatever its case.

    `ilc_letters`: the list is known to use the one-letter code, where U means the sole ulcer; without it U
    keeps its atlas meaning (ulcer, place not said). All other letters mean the same either way. Raises
    UnknownLesion.
    """
    wanted = text.strip().upper()
    if ilc_letters and wanted == "U":
        return ILC_ULCER
    if wanted in ILC_LETTERS:
        return ILC_LETTERS[wanted]
    try:
        return LesionCode(wanted)
    except ValueError:
        raise UnknownLesion(f"no lesion goes by the code {text!r}") from None


def dd_stage(text: str) -> DDStage:
    """The stage for what was written: "m2", "M4.1", "M41"; M5 of older papers is M0. Raises UnknownStage."""
    wanted = text.strip().upper().replace(",", ".")
    wanted = {"M5": "M0", "M41": "M4.1"}.get(wanted, wanted)
    try:
        return DDStage(wanted)
    except ValueError:
        raise UnknownStage(f"digital dermatitis has no stage {text!r}") from None


def group_of(code: LesionCode) -> LesionGroup:
    """The family a lesion is counted in by default (a business may count heel horn erosion elsewhere, D5)."""
    return LESIONS[code].group


def family_of(code: LesionCode) -> LesionCode:
    """The code it is a kind of (WLA -> WL), or itself."""
    return LESIONS[code].parent or code


def is_always_painful(code: LesionCode, stage: DDStage | None = None, sensitive_tissue: bool = False) -> bool:
    """Whether the lesion hurts by its nature ("alarm" lesion; members from memory).

    All ulcers, white line abscess, toe necrosis, foul, swelling above the horn; digital dermatitis at M2; a
    horn crack where sensitive tissue shows.
    """
    if code is LesionCode.DD:
        return stage is DDStage.M2
    if family_of(code) is LesionCode.HF:
        return sensitive_tissue
    return LESIONS[code].alarm
