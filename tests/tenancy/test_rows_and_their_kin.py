"""What one row may do with itself and its parents once it was read: all of it inside its own business."""

import pytest
from django.core.exceptions import ValidationError
from django.core.serializers import deserialize, serialize
from django.db import DatabaseError, IntegrityError, connection, transaction
from django.db.models import ProtectedError
from django.test.utils import CaptureQueriesContext

from farms.models import Contact, Cow, CowIdentity, Farm, Payer
from tests.tenancy.conftest import make_world
from trimops.accounts.models import Business
from trimops.kernel.errors import NotFound
from trimops.tenancy.errors import ScopeRequired
from trimops.tenancy.unscoped import unscoped
from visits.models import Visit


@pytest.fixture
def visit(world):
    return Visit.objects.within(world.mine.scope).get(pk=world.mine.visit.pk)


@pytest.fixture
def led_astray(world):
    """A visit of mine whose farm key points at their farm, as only a fault or bad data could leave it."""
    with unscoped("to break the row on purpose"):
        Visit.objects.filter(pk=world.mine.visit.pk).update(farm=world.theirs.farm)
    return Visit.objects.within(world.mine.scope).get(pk=world.mine.visit.pk)


def test_parents_are_read_by_their_key(visit):
    assert visit.farm.payer.name == "The Estate"
    assert visit.business.name == "Ash & Rye"


def test_a_key_into_another_business_finds_nothing(led_astray):
    with pytest.raises(Farm.DoesNotExist):
        led_astray.farm  # noqa: B018


def test_a_row_is_read_anew(visit):
    Visit.objects.within(visit.scope).filter(pk=visit.pk).update(note="gate code changed")
    visit.refresh_from_db()
    assert visit.note == "gate code changed"


def test_a_column_left_out_is_read_when_asked_for(world):
    visit = Visit.objects.within(world.mine.scope).only("note").get(pk=world.mine.visit.pk)
    assert visit.state == "wanted"
    assert visit.farm.name == "Low Croft"


def test_a_row_always_knows_its_business(world):
    rows = Visit.objects.within(world.mine.scope)
    for row in (*rows.defer("business", "note"), *rows.defer("business_id"), *rows.only("note")):
        assert row.get_deferred_fields() & {"business_id"} == set()


def test_a_row_is_locked_within_its_business(visit):
    with transaction.atomic():
        assert visit.locked() == visit


@pytest.mark.django_db(transaction=True)
def test_locking_needs_a_transaction_where_the_database_can_lock():
    if not connection.features.has_select_for_update:
        pytest.skip("this database takes its lock when the transaction begins")
    visit = make_world().mine.visit
    with pytest.raises(transaction.TransactionManagementError):
        visit.locked()


def test_a_row_that_somebody_took_away_meanwhile_is_not_found(visit):
    contact = Contact.objects.create(business=visit.farm.business, farm=visit.farm, name="A Milker")
    Contact.objects.within(visit.scope).filter(pk=contact.pk).delete()
    with transaction.atomic(), pytest.raises(NotFound, match="somebody has taken it away") as found:
        contact.locked()
    assert isinstance(found.value, Contact.DoesNotExist)


def test_a_row_cannot_be_locked_under_another_business(world, visit):
    visit.business = world.theirs.business
    with transaction.atomic(), pytest.raises(Visit.DoesNotExist):
        visit.locked()


def test_a_row_is_saved_and_one_column_of_it(visit):
    visit.note = "a"
    visit.save()
    visit.head_count = 7
    visit.save(update_fields=["head_count"])
    visit.refresh_from_db()
    assert (visit.note, visit.head_count) == ("a", 7)


def test_a_row_never_moves_to_another_business(world, visit):
    visit.business = world.theirs.business
    with pytest.raises(DatabaseError), transaction.atomic():
        visit.save(update_fields=["business"])
    with pytest.raises(IntegrityError), transaction.atomic():
        visit.save()


def test_a_hand_made_row_with_their_key_overwrites_nothing(world):
    fake = Contact(pk=_their_contact(world).pk, business=world.mine.business, farm=world.mine.farm, name="x")
    with pytest.raises(IntegrityError), transaction.atomic():
        fake.save()
    assert fake.delete() == (0, {})
    assert _their_contact(world).name == "Ringer of Low Croft"


def _their_contact(world):
    return Contact.objects.within(world.theirs.scope).get(farm=world.theirs.farm)


def test_deleting_a_row_takes_what_hangs_on_it(world):
    cow = Cow.objects.create(business=world.mine.business, farm=world.mine.farm, number="303")
    CowIdentity.objects.create(business=cow.business, cow=cow, kind="official_tag", value="303")
    assert cow.delete() == (2, {"farms.Cow": 1, "farms.CowIdentity": 1})


def test_deleting_a_row_is_refused_by_what_protects_it(world):
    with pytest.raises(ProtectedError):
        world.mine.payer.delete()


def test_deleting_scoped_rows_takes_what_hangs_on_them_and_nothing_of_theirs(world):
    cow = Cow.objects.create(business=world.mine.business, farm=world.mine.farm, number="303")
    CowIdentity.objects.create(business=cow.business, cow=cow, kind="official_tag", value="303")
    gone = Cow.objects.within(world.mine.scope).exclude(trims__kind="functional").delete()
    assert gone == (2, {"farms.Cow": 1, "farms.CowIdentity": 1})
    assert Cow.objects.within(world.theirs.scope).count() == 2


@pytest.mark.django_db(transaction=True)
def test_rows_asked_for_under_a_lock_are_deleted_without_one():
    world = make_world()
    rows = CowIdentity.objects.within(world.mine.scope).select_for_update()
    assert rows.delete() == (2, {"farms.CowIdentity": 2})


def test_deleting_a_business_needs_the_wall_to_be_opened(world):
    with pytest.raises(ScopeRequired):
        world.theirs.business.delete()
    with unscoped("a business is closed"), pytest.raises(ProtectedError):
        world.theirs.business.delete()


def test_a_whole_row_passes_its_own_checks(visit):
    visit.full_clean()


def test_a_parent_of_another_business_is_a_fault_of_that_field_and_looks_like_none(world, visit):
    visit.farm_id = world.theirs.farm.pk
    with pytest.raises(ValidationError) as theirs:
        visit.full_clean()
    visit.farm_id = 0
    with pytest.raises(ValidationError) as nobodys:
        visit.full_clean()
    assert theirs.value.message_dict.keys() == nobodys.value.message_dict.keys() == {"farm"}
    assert theirs.value.error_dict["farm"][0].code == nobodys.value.error_dict["farm"][0].code


def test_a_parent_at_hand_of_another_business_is_a_fault_of_that_field(world, visit):
    visit.van = world.theirs.van
    with pytest.raises(ValidationError) as fault:
        visit.clean()
    assert fault.value.message_dict.keys() == {"van"}


def test_a_parent_at_hand_is_not_asked_for_again_and_a_key_is(world, visit):
    asked = Visit.objects.within(visit.scope).select_related("farm").get(pk=visit.pk)
    assert _tables_asked(visit) >= {Farm._meta.db_table, Business._meta.db_table}
    assert not _tables_asked(asked) & {Farm._meta.db_table, Business._meta.db_table}


def test_a_parent_that_was_never_saved_or_is_another_than_the_key_says_is_asked_for(world, visit):
    visit.farm = Farm(pk=987_654_321, business=world.mine.business, name="Nowhere")
    with pytest.raises(ValidationError) as fault:
        visit.full_clean()
    assert fault.value.message_dict.keys() == {"farm"}
    visit.farm = world.mine.farm
    visit.__dict__["farm_id"] = 987_654_321
    with pytest.raises(ValidationError) as fault:
        visit.full_clean()
    assert fault.value.message_dict.keys() == {"farm"}


def test_a_parent_at_hand_of_another_business_does_not_pass_the_whole_check(world, visit):
    visit.farm = world.theirs.farm
    with pytest.raises(ValidationError) as fault:
        visit.full_clean()
    assert "farm" in fault.value.message_dict


def _tables_asked(row):
    """The tables that are asked whether a row of that key is there."""
    with CaptureQueriesContext(connection) as asked:
        row.full_clean()
    words = " ".join(query["sql"] for query in asked.captured_queries)
    return {model._meta.db_table for model in (Farm, Business) if f'FROM "{model._meta.db_table}"' in words}


def test_a_row_without_a_business_is_told_so(world):
    with pytest.raises(ValidationError) as fault:
        Contact(farm=world.mine.farm, name="A", part="owner").full_clean()
    assert "business" in fault.value.message_dict


def test_a_name_is_unique_within_the_business_alone(world):
    twin = Payer(business=world.mine.business, name="The Estate")
    with pytest.raises(ValidationError):
        twin.full_clean()
    Payer(business=world.mine.business, name="The Other Estate").full_clean()


def test_a_value_unique_everywhere_is_checked_everywhere(world, visit):
    visit.uid = world.theirs.visit.uid
    with pytest.raises(ValidationError) as fault:
        visit.full_clean()
    assert fault.value.message_dict.keys() == {"uid"}


def test_rows_come_in_by_creating_bulk_and_loading(world):
    farm, business = world.mine.farm, world.mine.business
    Contact.objects.bulk_create(
        [Contact(business=business, farm=farm, name=name, part="vet") for name in "ab"]
    )
    Contact.objects.create(business=business, farm=farm, name="c", part="vet")
    farm.contacts.create(business=business, name="d", part="vet")
    rows = Contact.objects.within(world.mine.scope)
    rows.get_or_create(name="e", defaults={"business": business, "farm": farm, "part": "vet"})
    rows.update_or_create(name="e", defaults={"part": "vet"})
    for loaded in deserialize("json", serialize("json", rows.filter(part="vet"))):
        loaded.save()
    assert list(rows.filter(part="vet").values_list("name", flat=True)) == ["a", "b", "c", "d", "e"]
