"""What the e-invoice library (factur-x 7.8) writes wrongly, put right in the tree."""

from lxml import etree

_RAM = "urn:un:unece:uncefact:data:standard:ReusableAggregateBusinessInformationEntity:100"
_CBC = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2"


def mend_cii(root: etree._Element, iban: str) -> None:
    """An IBAN that fails its country's own check becomes an account of another kind there: say IBAN again."""
    for account in root.iter(f"{{{_RAM}}}PayeePartyCreditorFinancialAccount"):
        other = account.find(f"{{{_RAM}}}ProprietaryID")
        if other is not None and other.text == iban:
            other.tag = f"{{{_RAM}}}IBANID"
            account.insert(0, other)


def mend_ubl(root: etree._Element, currency: str) -> None:
    """The rounding amount is always called euro; a credit note has its tax point in the place of an invoice's.

    And EN 16931 wants no version of UBL said (UBL-CR-002).
    """
    for rounding in root.iter(f"{{{_CBC}}}PayableRoundingAmount"):
        rounding.set("currencyID", currency)
    version = root.find(f"{{{_CBC}}}UBLVersionID")
    if version is not None:
        root.remove(version)
    tax_point = root.find(f"{{{_CBC}}}TaxPointDate")
    if tax_point is not None and etree.QName(root).localname == "CreditNote":
        root.find(f"{{{_CBC}}}IssueDate").addnext(tax_point)
