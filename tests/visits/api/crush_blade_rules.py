"""The knives on a random day at the crush: what the phones say of them, and what must stand after it.

A part of `CrushMachine`, which sends what is written here with all the rest.
"""

from hypothesis import strategies as st
from hypothesis.stateful import rule

from tests.factories import make_blade
from visits.models import Blade, BladeSaid, BladeTurn

PARTS = ("in_hand", "went_dull", "cracked", "chipped")
KNIVES = 3
# By their places among the knives of the day.
TURNS = (
    {"in_hand": [0]},
    {"in_hand": [0, 2]},
    {"in_hand": [1], "went_dull": [0]},
    {"in_hand": [0], "went_dull": [0, 1]},
    {"in_hand": [1], "cracked": [0]},
    {"chipped": [0, 2]},
    {"cracked": [2], "chipped": [1, 2]},
    {},
)


class BladeRules:
    """What `CrushMachine` says and checks of three knives that only its own visit knows."""

    @rule(number=st.integers(0, 1), turn=st.integers(0, len(TURNS) - 1), pick=st.integers(0, 5))
    def turn_the_knives(self, number, turn, pick):
        said = {part: [self._knives()[place] for place in TURNS[turn].get(part, ())] for part in PARTS}
        self._write(number, "blade", "blade", {**said, "at": self.phones[number].clock()}, pick)
        self.counts["turns of the knives"] += 1

    @rule(number=st.integers(0, 1), turn=st.integers(0, len(TURNS) - 1), is_sent=st.booleans())
    def say_the_wrong_knife(self, number, turn, is_sent):
        """By chance alone a turn that has arrived is seldom taken back."""
        self.turn_the_knives(number, turn, 0)
        phone = self.phones[number]
        writing = phone.good[-1]
        if is_sent:
            self._send(number, "as made")
        if writing in phone.good:
            self._note(number, phone.undo(writing))
            self._send(number, "as made")
            self.counts["turns taken back"] += 1

    def _knives(self):
        if not hasattr(self, "knives"):
            van = self.world.house.van
            self.knives = [make_blade(van, f"Knife {n} of {self.visit.pk}").pk for n in range(KNIVES)]
        return self.knives

    def check_blades(self):
        """Turns and words are those of the writings that show; a knife stands as its own words say, in their order."""
        shown = self.model.last_of("blade")
        assert turns_of(self.visit) == {
            kept.writing["record"]: (kept.placed_at, words_of(kept)) for kept in shown
        }
        if hasattr(self, "knives"):
            assert states_of(self.visit, self.knives) == {
                knife: state_by(shown, knife) for knife in self.knives
            }


def words_of(kept):
    return {(part, blade) for part in PARTS for blade in kept.writing["content"][part]}


def state_by(shown, knife):
    """Out of use by its last fault; else in use as soon as it was once in hand."""
    said = [(kept.placed_at, part) for kept in shown for part, blade in words_of(kept) if blade == knife]
    # Of two faults of one moment the crack counts, and "chipped" comes before "cracked" in the alphabet.
    if faults := sorted(word for word in said if word[1] in ("chipped", "cracked")):
        return "out_of_use", faults[-1][1]
    return ("in_use" if any(part == "in_hand" for _, part in said) else "bought"), ""


def turns_of(visit):
    """record -> (moment, what is said of which blade), as the server has them."""
    said = {}
    for turn, part, blade in (
        BladeSaid.objects.within(visit.scope)
        .filter(turn__visit=visit)
        .values_list("turn_id", "part", "blade_id")
    ):
        said.setdefault(turn, set()).add((part, blade))
    rows = BladeTurn.objects.within(visit.scope).filter(visit=visit)
    return {str(row.record): (row.at, said.get(row.pk, set())) for row in rows}


def states_of(visit, knives):
    rows = Blade.objects.within(visit.scope).filter(pk__in=knives)
    return {row.pk: (row.state, row.fault) for row in rows}
