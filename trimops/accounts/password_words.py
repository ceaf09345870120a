"""Words that everybody in the trade would try first."""

from django.core.exceptions import ValidationError

from trimops.accounts.models import User

# ASVS 6.1.2: the list of context-specific words. A password that is little else than one of them is refused.
HOUSE_WORDS = (
    *(
        "trimops",
        "hoof",
        "hooves",
        "hooftrimmer",
        "hooftrimming",
        "foottrimmer",
        "foottrimming",
        "trimmer",
        "trimming",
    ),
    *(
        "cattle",
        "cow",
        "cows",
        "crush",
        "dairy",
        "farm",
        "farmer",
        "herd",
        "milking",
        "office",
        "owner",
        "vet",
        "visit",
    ),
)
LETTERS_BESIDE = 5


class HouseWordsValidator:
    """Refuses what, without the trade's words and without figures and signs, leaves fewer than five letters."""

    def validate(self, password: str, user: User | None = None) -> None:
        left = "".join(sign for sign in password.lower() if sign.isalpha())
        found = False
        for word in sorted(HOUSE_WORDS, key=len, reverse=True):
            found = found or word in left
            left = left.replace(word, "")
        if found and len(left) < LETTERS_BESIDE:
            raise ValidationError("This is little else than words of the trade: add some of your own.")

    def get_help_text(self) -> str:
        return "More than words of the trade."
