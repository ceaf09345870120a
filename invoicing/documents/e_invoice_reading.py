"""The amounts of an e-invoice read back from its XML and held against the paper, to the cent."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from lxml import etree

from invoicing.documents.e_invoice_shape import xml_text
from invoicing.documents.invoice_content import InvoicePaper

TaxAmounts = tuple[str, Decimal, Decimal, Decimal]


@dataclass(frozen=True)
class XmlAmounts:
    """What an e-invoice says: number, currency, line nets (BT-131), (category, percent, taxable, tax), totals.

    `whole`: the signed discounts and charges on the document. `totals` by business term; absent ones are nought.
    """

    number: str
    currency: str
    line_nets: tuple[Decimal, ...]
    whole: tuple[Decimal, ...]
    tax_rows: tuple[TaxAmounts, ...]
    totals: dict[str, Decimal]


_NAMESPACES = {
    "rsm": "urn:un:unece:uncefact:data:standard:CrossIndustryInvoice:100",
    "ram": "urn:un:unece:uncefact:data:standard:ReusableAggregateBusinessInformationEntity:100",
    "udt": "urn:un:unece:uncefact:data:standard:UnqualifiedDataType:100",
    "cac": "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2",
    "cbc": "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2",
}


@dataclass(frozen=True)
class _Paths:
    """Where one syntax keeps what."""

    number: str
    currency: str
    line_net: str
    whole: tuple[str, str, str]
    tax_row: tuple[str, str, str, str, str]
    totals: dict[str, str]


_SETTLEMENT = "rsm:SupplyChainTradeTransaction/ram:ApplicableHeaderTradeSettlement/"
_SUMS = f"{_SETTLEMENT}ram:SpecifiedTradeSettlementHeaderMonetarySummation/ram:"
_CII = _Paths(
    "rsm:ExchangedDocument/ram:ID",
    f"{_SETTLEMENT}ram:InvoiceCurrencyCode",
    "rsm:SupplyChainTradeTransaction/ram:IncludedSupplyChainTradeLineItem/ram:SpecifiedLineTradeSettlement/"
    "ram:SpecifiedTradeSettlementLineMonetarySummation/ram:LineTotalAmount",
    (
        f"{_SETTLEMENT}ram:SpecifiedTradeAllowanceCharge",
        "ram:ChargeIndicator/udt:Indicator",
        "ram:ActualAmount",
    ),
    (
        f"{_SETTLEMENT}ram:ApplicableTradeTax",
        "ram:CategoryCode",
        "ram:RateApplicablePercent",
        "ram:BasisAmount",
        "ram:CalculatedAmount",
    ),
    {
        "BT-106": f"{_SUMS}LineTotalAmount",
        "BT-107": f"{_SUMS}AllowanceTotalAmount",
        "BT-108": f"{_SUMS}ChargeTotalAmount",
        "BT-109": f"{_SUMS}TaxBasisTotalAmount",
        "BT-110": f"{_SUMS}TaxTotalAmount",
        "BT-112": f"{_SUMS}GrandTotalAmount",
        "BT-113": f"{_SUMS}TotalPrepaidAmount",
        "BT-114": f"{_SUMS}RoundingAmount",
        "BT-115": f"{_SUMS}DuePayableAmount",
    },
)
_LEGAL = "cac:LegalMonetaryTotal/cbc:"
_UBL = _Paths(
    "cbc:ID",
    "cbc:DocumentCurrencyCode",
    "*/cbc:LineExtensionAmount",
    ("cac:AllowanceCharge", "cbc:ChargeIndicator", "cbc:Amount"),
    (
        "cac:TaxTotal/cac:TaxSubtotal",
        "cac:TaxCategory/cbc:ID",
        "cac:TaxCategory/cbc:Percent",
        "cbc:TaxableAmount",
        "cbc:TaxAmount",
    ),
    {
        "BT-106": f"{_LEGAL}LineExtensionAmount",
        "BT-107": f"{_LEGAL}AllowanceTotalAmount",
        "BT-108": f"{_LEGAL}ChargeTotalAmount",
        "BT-109": f"{_LEGAL}TaxExclusiveAmount",
        "BT-110": "cac:TaxTotal/cbc:TaxAmount",
        "BT-112": f"{_LEGAL}TaxInclusiveAmount",
        "BT-113": f"{_LEGAL}PrepaidAmount",
        "BT-114": f"{_LEGAL}PayableRoundingAmount",
        "BT-115": f"{_LEGAL}PayableAmount",
    },
)


def amounts_of(root: etree._Element) -> XmlAmounts:
    """The amounts of a CII or UBL tree."""
    paths = _CII if etree.QName(root).localname == "CrossIndustryInvoice" else _UBL
    every, indicator, amount = paths.whole
    return XmlAmounts(
        _text(root, paths.number),
        _text(root, paths.currency),
        tuple(Decimal(found.text or "0") for found in _line_nets(root, paths)),
        tuple(
            _number(part, amount) * (1 if _text(part, indicator) == "true" else -1)
            for part in root.findall(every, _NAMESPACES)
        ),
        tuple(_tax_row(row, paths.tax_row) for row in root.findall(paths.tax_row[0], _NAMESPACES)),
        {term: _number(root, path) for term, path in paths.totals.items()},
    )


def amounts_differ(root: etree._Element, paper: InvoicePaper) -> Iterator[str]:
    """A sentence for each figure in the XML that is not the paper's; none if they agree to the cent."""
    found = amounts_of(root)
    expected = _amounts_on(paper)
    for name in ("number", "currency", "line_nets", "whole", "tax_rows", "totals"):
        there, here = getattr(found, name), getattr(expected, name)
        if there != here:
            yield f"{name.replace('_', ' ')}: {there} in the XML, {here} on the paper."


def _amounts_on(paper: InvoicePaper) -> XmlAmounts:
    ordered = sorted(paper.whole, key=lambda part: part.is_charge)
    return XmlAmounts(
        xml_text(paper.number or ""),
        paper.currency,
        tuple(line.net for line in paper.lines),
        tuple(part.amount if part.is_charge else -part.amount for part in ordered),
        tuple((row.category, row.percent, row.taxable, row.tax) for row in paper.tax_rows),
        {
            "BT-106": paper.sum_of_lines,
            "BT-107": paper.allowances,
            "BT-108": paper.charges,
            "BT-109": paper.net,
            "BT-110": paper.tax,
            "BT-112": paper.gross,
            "BT-113": paper.paid,
            "BT-114": paper.rounding,
            "BT-115": paper.due,
        },
    )


def _line_nets(root: etree._Element, paths: _Paths) -> list[etree._Element]:
    found = root.findall(paths.line_net, _NAMESPACES)
    return [one for one in found if "Line" in etree.QName(one.getparent()).localname]


def _tax_row(row: etree._Element, paths: tuple[str, str, str, str, str]) -> TaxAmounts:
    _, category, percent, taxable, tax = paths
    return _text(row, category), _number(row, percent), _number(row, taxable), _number(row, tax)


def _text(node: etree._Element, path: str) -> str:
    return str(node.findtext(path, "", _NAMESPACES))


def _number(node: etree._Element, path: str) -> Decimal:
    return Decimal(_text(node, path) or "0")
