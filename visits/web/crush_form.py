"""The plain form for one cow at the crush: four feet, each with what was seen and what was done."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from django import forms
from django.http import QueryDict

from trimops.kernel.choices import choices_of
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import FEET_IN_ORDER, ZONE_NAMES, Claw, Foot
from visits.domain.lesions import LESIONS, DDStage, LesionCode, LesionGroup
from visits.web.forms import SCORES, read_score

NOTHING = ("", "–")
ON_A_CLAW = [
    ActionKind.LENGTH,
    ActionKind.BALANCE,
    ActionKind.MODEL,
    ActionKind.RELIEF,
    ActionKind.LOOSE_HORN,
    ActionKind.BLOCK_OFF,
    ActionKind.NO_CUT,
]
ON_THE_FOOT = [ActionKind.WRAP, ActionKind.DRESSING]
SIGN_WORDS = {
    "has_pain": "pain to the hoof testers",
    "has_swelling": "swelling",
    "swelling_above_dewclaw": "swelling above the dew claws",
    "has_bad_smell": "bad smell",
    "drew_blood": "blood drawn",
    "sensitive_tissue": "sensitive tissue open",
    "deep_infection": "looks infected deep inside",
    "no_better_at_recheck": "no better at this re-check",
}
FINDINGS_PER_FOOT = 2


@dataclass(frozen=True)
class SeenPart:
    """The fields of one thing seen on a foot; open when something is in them."""

    fields: list[forms.BoundField]
    is_open: bool


@dataclass(frozen=True)
class FootPart:
    """One foot's fields in the order of the work; a hind foot is shown open, a fore foot when it is filled in."""

    foot: Foot
    done: list[forms.BoundField]
    whole: forms.BoundField
    block: list[forms.BoundField]
    seen: list[SeenPart]
    signs: forms.BoundField
    measures: list[forms.BoundField]
    is_open: bool


class CrushForm(forms.Form):
    """Field names begin with the foot: LH_lateral, LH_lesion1 and so on."""

    all_may_stay_empty = True
    score = forms.ChoiceField(label="How she walked in", choices=SCORES, required=False)
    belly_band_minutes = forms.IntegerField(
        label="Belly band on, minutes", required=False, min_value=0, max_value=240
    )
    note = forms.CharField(label="Note", max_length=300, required=False)
    told_vet = forms.CharField(
        label="Whom you told about the vet",
        max_length=120,
        required=False,
        help_text="Only where something is the vet's.",
    )

    def __init__(self, data: QueryDict | None = None) -> None:
        super().__init__(data)
        for foot in FEET_IN_ORDER:
            self.fields |= _foot_fields(foot)

    def feet(self) -> Iterator["FootPart"]:
        """Each foot's fields as the page lays them out."""
        return (_foot_part(self, foot) for foot in FEET_IN_ORDER)

    def about_the_cow(self) -> list[forms.BoundField]:
        return [self[name] for name in ("belly_band_minutes", "note", "told_vet")]

    def entry(self) -> CowEntry:
        """The cow as put down, once the form is valid. Feet with nothing in them were not lifted."""
        data = self.cleaned_data
        scale, score = read_score(data["score"])
        feet = [_foot_entry(foot, self) for foot in FEET_IN_ORDER]
        return CowEntry(
            tuple(foot for foot in feet if foot is not None),
            scale,
            score,
            data["belly_band_minutes"],
            data["note"],
        )


def _foot_part(form: CrushForm, foot: Foot) -> FootPart:
    def some(*names: str) -> list[forms.BoundField]:
        return [form[f"{foot.value}_{name}"] for name in names]

    def seen(n: int) -> SeenPart:
        fields = some(f"lesion{n}", f"claw{n}", f"zone{n}", f"severity{n}", f"stage{n}")
        return SeenPart(fields, any(_is_filled(field) for field in fields))

    every = [form[name] for name in form.fields if name.startswith(f"{foot.value}_")]
    return FootPart(
        foot=foot,
        done=some("lateral", "medial"),
        whole=some("foot")[0],
        block=some("block", "block_claw"),
        seen=[seen(n) for n in range(1, FINDINGS_PER_FOOT + 1)],
        signs=some("signs")[0],
        measures=some("wall_mm", "toe_angle"),
        is_open=foot.is_hind or any(_is_filled(field) for field in every),
    )


def _is_filled(field: forms.BoundField) -> bool:
    return bool(field.errors) or field.value() not in (None, "", [], "1")


def _foot_fields(foot: Foot) -> dict[str, forms.Field]:
    key = foot.value
    many = forms.CheckboxSelectMultiple
    fields: dict[str, forms.Field] = {}
    for claw in (Claw.LATERAL, Claw.MEDIAL):
        choices = [(kind.value, kind.label) for kind in ON_A_CLAW]
        fields[f"{key}_{claw.value}"] = forms.MultipleChoiceField(
            label=claw.label.capitalize(), choices=choices, required=False, widget=many
        )
    fields[f"{key}_foot"] = forms.MultipleChoiceField(
        label="Whole foot",
        choices=[(k.value, k.label) for k in ON_THE_FOOT],
        required=False,
        widget=many,
    )
    fields[f"{key}_block"] = _pick("Block put on", choices_of(BlockKind))
    fields[f"{key}_block_claw"] = _pick(
        "On which claw", [(c.value, c.label) for c in (Claw.LATERAL, Claw.MEDIAL)]
    )
    for n in range(1, FINDINGS_PER_FOOT + 1):
        fields |= _finding_fields(key, n)
    fields[f"{key}_signs"] = forms.MultipleChoiceField(
        label="Signs", choices=list(SIGN_WORDS.items()), required=False, widget=many
    )
    fields[f"{key}_wall_mm"] = forms.IntegerField(
        label="Front wall, mm", required=False, min_value=40, max_value=200
    )
    fields[f"{key}_toe_angle"] = forms.IntegerField(
        label="Toe angle, °", required=False, min_value=20, max_value=90
    )
    return fields


def _finding_fields(key: str, n: int) -> dict[str, forms.Field]:
    zones = [(number, f"{number} {name}") for number, name in ZONE_NAMES.items()]
    return {
        f"{key}_lesion{n}": _pick("Seen", _lesions()),
        f"{key}_claw{n}": _pick("Where", choices_of(Claw)),
        f"{key}_zone{n}": _pick("Zone", zones),
        f"{key}_severity{n}": forms.ChoiceField(
            label="How bad",
            choices=[(1, "1 slight"), (2, "2 clear"), (3, "3 severe")],
            required=False,
            initial="1",
        ),
        f"{key}_stage{n}": _pick("Stage (digital dermatitis)", choices_of(DDStage)),
    }


def _lesions() -> list[tuple[str, list[tuple[str, str]]]]:
    """What may be seen, by family, so that the list can be read in a crush."""
    families: dict[str, list[tuple[str, str]]] = {group.label: [] for group in LesionGroup}
    for lesion in LESIONS.values():
        families[lesion.group.label].append((lesion.code.value, lesion.name))
    return list(families.items())


def _pick(label: str, choices: Sequence[tuple[object, object]]) -> forms.Field:
    return forms.ChoiceField(label=label, choices=[NOTHING, *choices], required=False)


def _foot_entry(foot: Foot, form: CrushForm) -> FootEntry | None:
    key, data = foot.value, form.cleaned_data
    signs = set(data[f"{key}_signs"])
    entry = FootEntry(
        foot=foot,
        wall_mm=data[f"{key}_wall_mm"],
        toe_angle=data[f"{key}_toe_angle"],
        has_pain="has_pain" in signs,
        has_swelling="has_swelling" in signs,
        swelling_above_dewclaw="swelling_above_dewclaw" in signs,
        has_bad_smell="has_bad_smell" in signs,
        drew_blood="drew_blood" in signs,
        sensitive_tissue="sensitive_tissue" in signs,
        deep_infection="deep_infection" in signs,
        no_better_at_recheck="no_better_at_recheck" in signs,
        findings=tuple(_findings(key, form)),
        actions=tuple(_actions(key, form)),
    )
    return None if entry == FootEntry(foot=foot) else entry


def _findings(key: str, form: CrushForm) -> Iterator[FindingEntry]:
    data = form.cleaned_data
    for n in range(1, FINDINGS_PER_FOOT + 1):
        if not (lesion := data[f"{key}_lesion{n}"]):
            continue
        zone, stage = data[f"{key}_zone{n}"], data[f"{key}_stage{n}"]
        yield FindingEntry(
            LesionCode(lesion),
            Claw(data[f"{key}_claw{n}"] or Claw.LATERAL),
            int(zone) if zone else None,
            int(data[f"{key}_severity{n}"] or 1),
            DDStage(stage) if stage else None,
        )


def _actions(key: str, form: CrushForm) -> Iterator[ActionEntry]:
    data = form.cleaned_data
    for claw in (Claw.LATERAL, Claw.MEDIAL):
        for kind in data[f"{key}_{claw.value}"]:
            yield ActionEntry(ActionKind(kind), claw)
    for kind in data[f"{key}_foot"]:
        yield ActionEntry(ActionKind(kind))
    if block := data[f"{key}_block"]:
        claw_value = data[f"{key}_block_claw"]
        yield ActionEntry(ActionKind.BLOCK, Claw(claw_value) if claw_value else None, BlockKind(block))
