"""Many cows of a farm in one go."""

from rest_framework import serializers

from farms.api.cow_content import CowShown, CowWord, cow_faults, details_of, fill
from farms.models import Cow, Farm
from farms.services.save_cows import CowWord as Word
from farms.services.save_cows import save_cows
from trimops.accounts.actions import Action
from trimops.api.fields import many
from trimops.api.kinds import StepApi
from trimops.api.op import Op, Said, Shape
from trimops.api.refusals import CannotBeMeant
from trimops.api.rows import MOST_ID

MOST = 1000


class CowRow(CowWord):
    """A cow as one row of many. With `id`: the known cow; what is left out stays."""

    id = serializers.IntegerField(min_value=1, max_value=MOST_ID, required=False)
    number = serializers.CharField(max_length=20, required=False, help_text="Needed of a new cow.")

    class Meta(CowWord.Meta):
        fields = ["id", *CowWord.Meta.fields]

    def validate(self, attrs: Said) -> Said:
        # because: whether a change can be meant is known only beside the cow that it changes
        if "id" in attrs:
            return attrs
        if "number" not in attrs:
            raise serializers.ValidationError(
                {"number": "A new cow needs the number that the farm calls her by."}
            )
        return super().validate(attrs)


class CowRows(serializers.Serializer):  # type: ignore[type-arg]
    """Up to a thousand cows, new and known."""

    rows = many(CowRow, least=1, most=MOST)


class CowsKept(serializers.Serializer):  # type: ignore[type-arg]
    """The cows, in the order in which they were said."""

    rows = CowShown(many=True, read_only=True)


class CowsAtOnceApi(StepApi[Farm]):
    """Up to 1,000 cows of a farm, added or changed: all of them or none. Each fault is told with its place, such as
    `rows[3].electronic_id`. A row with `id` changes the cow of that id, without an ETag: of two who change one cow at
    once the later stands."""

    model = Farm
    related = ("business",)
    ops = {
        "post": Op(
            Action.KEEP_COWS,
            "save_cows",
            "Many cows of a farm at once",
            takes=CowRows,
            shows=CowsKept,
            repeats=True,
        )
    }

    def act(self, row: Farm, content: Said) -> Shape:
        said = content["rows"]
        known = self._known(row, said)
        words = []
        for each in said:
            cow = known[each["id"]] if "id" in each else Cow(business=self.seat.business, farm=row)
            marks, lactation = fill(cow, each)
            words.append(Word(cow, marks, lactation))
        kept = save_cows(farm=row, words=words, at=self.now)
        shown = Cow.objects.within(self.scope).prefetch_related(*details_of(self.scope))
        by_key = shown.in_bulk([cow.pk for cow in kept])
        return {"rows": [by_key[cow.pk] for cow in kept]}

    def _known(self, farm: Farm, said: list[Said]) -> dict[int, Cow]:
        """The cows that are named, locked; CannotBeMeant (422) for each that is not of the farm, or twice."""
        keys = [each["id"] for each in said if "id" in each]
        rows = Cow.objects.within(self.scope).filter(farm=farm, pk__in=set(keys)).order_by("pk")
        known = {cow.pk: cow for cow in rows.select_related("business").locked()}
        faults = []
        for n, each in enumerate(said):
            key = each.get("id")
            if key is None:
                continue
            if key not in known:
                faults.append((f"rows[{n}].id", "There is no such cow at this farm."))
            elif keys.count(key) > 1:
                faults.append((f"rows[{n}].id", "This cow stands here more than once."))
            else:
                wrong = cow_faults(each, known[key])
                faults += [(f"rows[{n}].{name}", reason) for name, reason in wrong.items()]
        if faults:
            raise CannotBeMeant(faults=faults)
        return known
