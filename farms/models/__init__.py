from farms.models.contact import Contact
from farms.models.cow import Calving, Cow, CowIdentity
from farms.models.erasure import Erasure
from farms.models.farm import Farm, HygieneChange
from farms.models.farm_access import FarmAccess
from farms.models.herd_import import HerdImport
from farms.models.milking import WEEKDAYS, Milking
from farms.models.payer import Payer
from farms.models.vet_pass import VetPass

__all__ = [
    "WEEKDAYS",
    "Calving",
    "Contact",
    "Cow",
    "CowIdentity",
    "Erasure",
    "Farm",
    "FarmAccess",
    "HerdImport",
    "HygieneChange",
    "Milking",
    "Payer",
    "VetPass",
]
