"""Why a question to the outside got no answer."""

from enum import StrEnum


class Why(StrEnum):
    REFUSED = "refused"
    AWAY = "away"
    SLOW = "slow"
    BROKE_OFF = "broke off"
    LARGE = "large"
    ELSEWHERE = "elsewhere"


class NoAnswer(Exception):
    """`why` for programs; the text for people, as the end of "It was not read: …".

    REFUSED: we do not ask there. AWAY: nobody is there, or cannot prove who they are. ELSEWHERE: it points to another
    address, which is not followed.
    """

    def __init__(self, why: Why, words: str) -> None:
        super().__init__(words)
        self.why = why
