"""Messages of the furnished house."""

from invoicing.models import Sending
from tests.factories import House
from tests.trimops.outbox.messages import put


def outgoing_of(house: House, sending: Sending) -> dict[str, object]:
    """One to the first farm, and the mail with its bill."""
    return {"outgoing": put(house, farm_id=house.farm.pk).pk, "money_mail": sending.outgoing_id}
