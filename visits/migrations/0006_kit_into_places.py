"""The stock of yard and vans moves into places, uses become recipes, retired knives keep being retired."""

from datetime import UTC, datetime, time

from django.db import migrations
from django.db.models import F, Q

STORE = "Store"


def into_places(apps, schema_editor):
    place_of = _make_places(apps)
    _move_stock(apps, place_of)
    _write_recipes(apps)
    _say_states(apps)


def out_of_places(apps, schema_editor):
    """What the older tables could say is said there again; counts, lots and blades taken in hand are not."""
    movements = apps.get_model("visits", "StockMovement").objects
    for place in apps.get_model("visits", "StockPlace").objects.all():
        movements.filter(place=place).update(van_id=place.van_id)
    # A move between places was not known.
    movements.filter(kind="moved").update(kind="counted")
    movements.update(place=None, lot=None, count=None)
    for name in (
        "BladeSaid",
        "BladeTurn",
        "StockCount",
        "StockLot",
        "StockPlace",
        "SupplyLine",
        "SupplyOrder",
    ):
        apps.get_model("visits", name).objects.all().delete()
    blades = apps.get_model("visits", "Blade").objects
    # A knife had a van.
    apps.get_model("visits", "Sharpening").objects.filter(blade__van__isnull=True).delete()
    blades.filter(van__isnull=True).delete()
    for blade in blades.filter(state="retired"):
        blade.retired_on = blade.state_since.date()
        blade.save(update_fields=["retired_on"])
    items = apps.get_model("visits", "Consumable").objects
    for rule in apps.get_model("visits", "UseRule").objects.filter(per="block"):
        row = items.filter(pk=rule.consumable_id)
        if rule.block_kind:
            row.update(block_kind=rule.block_kind)
        else:
            row.update(used_per_block=rule.quantity)


def _make_places(apps):
    """(business, van) -> its place; the store's van is None."""
    movements, vans = apps.get_model("visits", "StockMovement"), apps.get_model("visits", "Van")
    places = apps.get_model("visits", "StockPlace").objects
    found = {}
    for business, van in movements.objects.order_by().values_list("business_id", "van_id").distinct():
        name = vans.objects.get(pk=van).name if van else STORE
        if van and name == STORE:
            name = f"{name} (van)"
        found[business, van] = places.create(business_id=business, van_id=van, name=name)
    return found


def _move_stock(apps, place_of):
    movements = apps.get_model("visits", "StockMovement").objects
    for (business, van), place in place_of.items():
        movements.filter(business_id=business, van_id=van).update(place=place, noted_at=F("at"))
    movements.filter(quantity=0).delete()
    used = movements.filter(kind="used")
    used.filter(trim__isnull=False).update(use_of="cow")
    used.filter(trim__isnull=True).update(use_of="by_hand")
    movements.exclude(kind="bought").update(cost=None)
    movements.filter(kind="bought", quantity__lt=0).update(kind="written_off", because="other", cost=None)
    movements.filter(kind="written_off").filter(Q(because="") & Q(quantity__lt=0)).update(because="other")
    _name_lots(apps, movements)
    _turn_counts(apps, movements)


def _name_lots(apps, movements):
    lots = apps.get_model("visits", "StockLot").objects
    for row in movements.filter(kind="bought"):
        row.lot = lots.create(
            business_id=row.business_id, consumable_id=row.consumable_id, bought_on=row.at.date()
        )
        row.save(update_fields=["lot"])


def _turn_counts(apps, movements):
    """A count said a difference only; what lay there then follows from the lines up to it."""
    counts, members = apps.get_model("visits", "StockCount").objects, apps.get_model("accounts", "Membership")
    loose = movements.filter(Q(kind="counted") | Q(kind="written_off", quantity__gt=0)).order_by("at", "id")
    for row in loose:
        upto = movements.filter(consumable_id=row.consumable_id, place_id=row.place_id)
        upto = upto.filter(Q(at__lt=row.at) | Q(at=row.at, id__lte=row.pk))
        left = sum(upto.values_list("quantity", flat=True))
        owner = members.objects.filter(business_id=row.business_id).order_by("id").first()
        row.kind, row.because = "counted", ""
        row.count = counts.create(
            business_id=row.business_id,
            consumable_id=row.consumable_id,
            place_id=row.place_id,
            counted=max(left, 0),
            at=row.at,
            noted_at=row.at,
            by_id=owner.user_id,
            note="A difference noted before counts were kept",
        )
        row.save(update_fields=["kind", "because", "count"])


def _write_recipes(apps):
    rules = apps.get_model("visits", "UseRule").objects
    for item in apps.get_model("visits", "Consumable").objects.all():
        words = {"business_id": item.business_id, "consumable": item}
        if item.block_kind:
            rules.create(per="block", block_kind=item.block_kind, quantity=1, **words)
        if item.used_per_block > 0:
            rules.create(per="block", quantity=item.used_per_block, **words)
        if item.kind in ("wrap", "dressing"):
            rules.create(per=item.kind, quantity=1, **words)


def _say_states(apps):
    for blade in apps.get_model("visits", "Blade").objects.all():
        day = blade.retired_on or blade.bought_on
        blade.state = "retired" if blade.retired_on else "in_use"
        blade.state_since = datetime.combine(day, time(12), UTC)
        blade.save(update_fields=["state", "state_since"])


class Migration(migrations.Migration):
    dependencies = [("visits", "0005_kit"), ("accounts", "0001_initial")]
    operations = [migrations.RunPython(into_places, out_of_places)]
