"""By which rules the draft lists of a farm are made."""

from dataclasses import asdict, fields

from rest_framework import serializers

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.kinds import RowApi, ToldApi
from trimops.api.op import Op, Said
from visits.domain.draft_rules import MOST_DAYS, RULE_SETS, DraftRules, own_of
from visits.selectors.draft_rules_in_use import rules_in_use
from visits.services.choose_draft_rules import choose_draft_rules

SETS = [(each.id, each.name) for each in RULE_SETS.values()]


class DraftRulesShown(serializers.Serializer):  # type: ignore[type-arg]
    """Which reasons a farm goes by, and their days; said, only what is to differ from the set."""

    def get_fields(self) -> Said:
        return {each.name: _field(each.type) for each in fields(DraftRules)}


def _field(kind: object) -> serializers.BooleanField | serializers.IntegerField:
    if kind is bool or kind == "bool":
        return serializers.BooleanField(required=False)
    return serializers.IntegerField(min_value=0, max_value=MOST_DAYS, required=False)


class FarmRulesWord(serializers.Serializer):  # type: ignore[type-arg]
    """A set, the farm's own days laid over it, or both. Another set begins without own days."""

    rule_set = serializers.ChoiceField(SETS)
    own = DraftRulesShown(help_text="Only what differs from the set.")


class FarmRulesShown(serializers.Serializer):  # type: ignore[type-arg]
    """The set that a farm goes by, its own days, and the rules that come of both."""

    farm = serializers.IntegerField()
    rule_set = serializers.ChoiceField(SETS)
    own = DraftRulesShown()
    rules = DraftRulesShown()
    changed_at = serializers.DateTimeField(allow_null=True)

    def to_representation(self, instance: Farm) -> Said:
        using = rules_in_use(instance)
        told = {
            "farm": instance.pk,
            "rule_set": using.rule_set.id,
            "rules": asdict(using.rules),
            "changed_at": using.choice.changed_at if using.choice else None,
        }
        shown: Said = super().to_representation({**told, "own": asdict(using.rules)})
        return {**shown, "own": own_of(using.rule_set.id, using.rules)}


class RuleSetShown(serializers.Serializer):  # type: ignore[type-arg]
    """A set of rules: for whom it is, and its days."""

    rule_set = serializers.CharField()
    name = serializers.CharField()
    told = serializers.CharField()
    rules = DraftRulesShown()


class RuleSetsShown(serializers.Serializer):  # type: ignore[type-arg]
    """All sets."""

    items = RuleSetShown(many=True)


class FarmRulesApi(RowApi[Farm]):
    """Published sources disagree on when a sound cow is to be trimmed, so each routine rule can be switched off and
    each number of days is the farm's; lame cows and what is due cannot be. Refused: days that cannot be
    (draft_rules_make_no_sense), such as a warning of calving that comes later than four weeks before."""

    model = Farm
    related = ("business",)
    ops = {
        "get": Op(Action.SEE_EVERY_FARM, "read_draft_rules", "A farm's draft rules", shows=FarmRulesShown),
        "patch": Op(
            Action.KEEP_VISITS,
            "choose_draft_rules",
            "Choose a farm's draft rules",
            takes=FarmRulesWord,
            shows=FarmRulesShown,
            changes=True,
        ),
    }

    def change(self, row: Farm, content: Said) -> Farm:
        using = rules_in_use(row)
        rule_set = content.get("rule_set", using.rule_set.id)
        kept = own_of(using.rule_set.id, using.rules) if "rule_set" not in content else {}
        choose_draft_rules(
            farm=row, rule_set=rule_set, own=content.get("own", kept), at=self.now, by=self.seat.user
        )
        return row


class RuleSetsApi(ToldApi):
    """The sets of rules that there are, each with its days and for whom it is."""

    ops = {
        "get": Op(
            Action.SEE_EVERY_FARM, "list_draft_rule_sets", "The sets of draft rules", shows=RuleSetsShown
        )
    }

    def told(self) -> Said:
        return {
            "items": [
                {"rule_set": each.id, "name": each.name, "told": each.told, "rules": asdict(each.rules)}
                for each in RULE_SETS.values()
            ]
        }
