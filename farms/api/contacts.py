"""People of a farm, and its vet: whom to ring and who gets the papers."""

from farms.api.of_farm import FarmRowsApi
from farms.models import Contact
from farms.services.save_contact import remove_contact, save_contact
from trimops.accounts.actions import Action
from trimops.api.asked import Words, YesOrNo
from trimops.api.kinds import RowApi, set_fields
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import RowContent

TOLD = ["name", "part", "phone", "email", "gets_reports", "gets_invitations", "told_by", "language"]


class ContactWord(RowContent):
    """What may be said of a person of a farm."""

    class Meta:
        model = Contact
        fields = TOLD


class ContactShown(RowContent):
    """A person of a farm. `opted_out_at`: since when they want no messages of visits; only they can take that back."""

    class Meta:
        model = Contact
        fields = ["id", "farm", *TOLD, "opted_out_at"]


class ContactsApi(FarmRowsApi[Contact]):
    """The people of a farm. Whoever is told of visits needs an address for the way in which they are told."""

    model = Contact
    read_at = "contacts"
    ops = {
        "get": Op(
            Action.KEEP_FARMS,
            "list_contacts",
            "The people of a farm",
            shows=ContactShown,
            lists=True,
            orders={"name": ("name",), "id": ("id",)},
            filters={
                "gets_reports": Filter(YesOrNo(), "gets_reports"),
                "name": Filter(Words(max_length=120, help_text="Part of the name."), "name__icontains"),
            },
        ),
        "post": Op(
            Action.KEEP_FARMS,
            "add_contact",
            "One more person of a farm",
            takes=ContactWord,
            shows=ContactShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> Contact:
        contact = Contact(business=self.seat.business, farm=self.farm)
        set_fields(contact, content)
        return save_contact(contact=contact)


class ContactApi(RowApi[Contact]):
    """One person of a farm: what they do there, how they are reached, what they are told."""

    model = Contact
    ops = {
        "get": Op(Action.KEEP_FARMS, "read_contact", "One person of a farm", shows=ContactShown),
        "patch": Op(
            Action.KEEP_FARMS,
            "change_contact",
            "Change a person of a farm",
            takes=ContactWord,
            shows=ContactShown,
            changes=True,
        ),
        "delete": Op(
            Action.KEEP_FARMS,
            "remove_contact",
            "Take a person off a farm's list",
            status=204,
            changes=True,
        ),
    }

    def change(self, row: Contact, content: Said) -> Contact:
        set_fields(row, content)
        return save_contact(contact=row)

    def remove(self, row: Contact) -> None:
        remove_contact(contact=row)
