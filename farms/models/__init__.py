from farms.models.contact import Contact
from farms.models.cow import Cow, CowIdentity
from farms.models.farm import Farm, HygieneChange
from farms.models.farm_access import FarmAccess
from farms.models.herd_import import HerdImport
from farms.models.milking import WEEKDAYS, Milking
from farms.models.payer import Payer

__all__ = [
    "WEEKDAYS",
    "Contact",
    "Cow",
    "CowIdentity",
    "Farm",
    "FarmAccess",
    "HerdImport",
    "HygieneChange",
    "Milking",
    "Payer",
]
