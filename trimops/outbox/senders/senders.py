"""Who sends what goes by each way."""

from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.senders.mail import send_by_mail
from trimops.outbox.senders.ready import Sender
from trimops.outbox.senders.sms import send_by_sms
from trimops.outbox.senders.webhook import send_by_webhook

SENDERS: dict[Channel, Sender] = {
    Channel.MAIL: send_by_mail,
    Channel.SMS: send_by_sms,
    Channel.WEBHOOK: send_by_webhook,
}
