"""Who a person is within a business."""

from django.db import models


class Role(models.TextChoices):
    OWNER = "owner", "Owner"
    TRIMMER = "trimmer", "Trimmer"
    OFFICE = "office", "Office"
    FARM = "farm", "Farm client"


class FarmRight(models.TextChoices):
    """What one person of a farm may do there, beyond seeing its cows and visits; staff may do all of it."""

    READS_REPORTS = "reads_reports", "Reads reports and figures"
    EDITS_DRAFT = "edits_draft", "Changes the draft list"
    ASKS_VISITS = "asks_visits", "Asks for visits and takes hours"
    SEES_MONEY = "sees_money", "Sees invoices"
    HANDS_OVER = "hands_over", "Takes the farm's data out and lets the vet in"


STAFF = frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})
EVERYONE = frozenset(Role)
AT_THE_CRUSH = frozenset({Role.OWNER, Role.TRIMMER})
