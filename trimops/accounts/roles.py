"""Who a person is within a business."""

from django.db import models


class Role(models.TextChoices):
    OWNER = "owner", "Owner"
    TRIMMER = "trimmer", "Trimmer"
    OFFICE = "office", "Office"
    FARM = "farm", "Farm client"


STAFF = frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})
EVERYONE = frozenset(Role)
AT_THE_CRUSH = frozenset({Role.OWNER, Role.TRIMMER})
