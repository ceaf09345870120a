"""Owners are told by mail what a plan proposes that nobody asked for."""

from datetime import datetime, time, timedelta

from django.conf import settings
from django.db import transaction
from django.urls import reverse

from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.kernel.clock import at_local
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.services.put_out import Message, put_out
from visits.documents.proposal_mail import proposal_subject, proposal_text
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.proposal_content import proposal_content


@transaction.atomic
def tell_proposal(*, week_plan: WeekPlan, at: datetime) -> list[Outgoing]:
    """One mail to each owner about a proposal of the evening's look ahead; done twice, it is done once.

    Nobody is told of a plan that a person asked for, that failed, or that is not open any more.
    """
    if week_plan.asked_by_id is not None or week_plan.state != WeekPlanState.PROPOSED:
        return []
    business = week_plan.business
    address = f"{settings.SITE_ADDRESS}{reverse('this_week')}?week={week_plan.monday.isoformat()}"
    proposal = proposal_content(week_plan, at, address)
    after_week = at_local(week_plan.monday + timedelta(days=7), time(0), business.zone)
    owners = Membership.objects.filter(business=business, role=Role.OWNER, joined_at__isnull=False)
    sent = [
        put_out(
            business_id=business.pk,
            message=Message(
                channel=Channel.MAIL,
                topic=Topic.PLAN,
                address=owner.user.email,
                subject=proposal_subject(proposal),
                body=proposal_text(proposal),
                once=f"plan:{week_plan.pk}:{owner.pk}",
                worthless_after=after_week,
            ),
            at=at,
        )
        for owner in owners.filter(ended_at__isnull=True).select_related("user").order_by("pk")
    ]
    return [row for row in sent if row is not None]
