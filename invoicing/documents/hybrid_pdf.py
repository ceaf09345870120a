"""The invoice for the archive: PDF/A-3b (ISO 19005-3), with the e-invoice inside it as factur-x.xml.

Steps and their reasons as measured in standards-facts, section 1.4: all faces embedded, no page transitions, an sRGB
output intent, and the validator of `pikepdf.pdfa` asked before the XML goes in (it cannot judge a file with
attachments). Nothing depends on the clock: the same paper gives the same bytes. The engines are loaded with the first
paper: most processes issue none.
"""

from datetime import UTC
from importlib import import_module
from io import BytesIO
from typing import TYPE_CHECKING

from lxml import etree

from invoicing.documents.invoice_content import InvoicePaper
from invoicing.documents.invoice_pdf import invoice_info, invoice_pdf
from trimops.kernel.errors import RuleBroken
from trimops.paper.sheet import SheetInfo

if TYPE_CHECKING:
    from pikepdf import Pdf

XML_NAME = "factur-x.xml"
FLAVOUR = "3b"
LEVEL = "EN 16931"
_NAMESPACE = "urn:factur-x:pdfa:CrossIndustryDocument:invoice:1p0#"
_RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
# An identity made of the contents, and the version that ISO 19005-3 rests on.
_CHOSEN = {"deterministic_id": True, "min_version": "1.7"}


class NotForTheArchive(RuleBroken):
    """The page came out as something that is no PDF/A-3b; nothing may be issued with it."""

    code = "paper_not_archivable"


def archive_pdf(paper: InvoicePaper) -> bytes:
    """The invoice as PDF/A-3b without XML. Raises as `invoice_pdf` does, and NotForTheArchive."""
    with _base(paper) as pdf:
        _describe(pdf, invoice_info(paper), has_xml=False)
        _refuse_unless_archivable(pdf)
        return _saved(pdf)


def hybrid_pdf(paper: InvoicePaper, cii: bytes) -> bytes:
    """The invoice as PDF/A-3b with `cii`, byte by byte, inside it. Raises as `archive_pdf` does."""
    with _base(paper) as pdf:
        # because: the validator knows no extension schemas, so it is asked before ours are written
        _refuse_unless_archivable(pdf)
        _attach(pdf, paper, cii)
        _describe(pdf, invoice_info(paper), has_xml=True)
        return _saved(pdf)


def _base(paper: InvoicePaper) -> "Pdf":
    engine = import_module("pikepdf")
    pdf: Pdf = engine.open(BytesIO(invoice_pdf(paper, packed=False)))
    for page in pdf.pages:
        if engine.Name.Trans in page:
            del page[engine.Name.Trans]
    import_module("pikepdf.pdfa").prepare(pdf, FLAVOUR)
    return pdf


def _refuse_unless_archivable(pdf: "Pdf") -> None:
    report = import_module("pikepdf.pdfa").check(pdf, FLAVOUR, **_CHOSEN)
    if not report.passed:
        found = "; ".join(sorted({str(finding) for finding in report.findings}))
        raise NotForTheArchive(f"This paper cannot be kept in the archive as PDF/A-3: {found}")


def _describe(pdf: "Pdf", info: SheetInfo, *, has_xml: bool) -> None:
    """The metadata (XMP) that says what the file is, and of which e-invoice."""
    at = info.made_at.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%S+00:00")
    said = {
        "pdfa3_flavor": "B",
        "title": info.title,
        "author": info.author,
        "subject": info.subject,
        "producer": "pikepdf",
        "creator_tool": "trimops",
        "timestamp": at,
    }
    if has_xml:
        said |= {"urn": _NAMESPACE, "documenttype": "INVOICE", "xml_filename": XML_NAME}
        said |= {"version": "1.0", "xmp_level": LEVEL}
    packet = etree.tostring(_packet(said), encoding="unicode")
    begun = '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>'
    metadata = f'{begun}\n{packet}\n<?xpacket end="w"?>'.encode()
    name = import_module("pikepdf").Name
    pdf.Root.Metadata = pdf.make_stream(metadata, Type=name.Metadata, Subtype=name.XML)


def _packet(said: dict[str, str]) -> etree._Element:
    """What facturx writes, with the empty `rdf:about` that XMP asks for, and no namespace that is not used."""
    packet: etree._Element = import_module("facturx").generate_xmp_object(said)
    for described in packet.iter(f"{_RDF}Description"):
        described.set(f"{_RDF}about", "")
    etree.cleanup_namespaces(packet)
    return packet


def _attach(pdf: "Pdf", paper: InvoicePaper, cii: bytes) -> None:
    engine = import_module("pikepdf")
    at = paper.made_at.astimezone(UTC).strftime("D:%Y%m%d%H%M%S+00'00'")
    spec = engine.AttachedFileSpec(
        pdf,
        cii,
        description="The same invoice as EN 16931 data",
        filename=XML_NAME,
        mime_type="text/xml",
        creation_date=at,
        mod_date=at,
        relationship=engine.Name.Alternative,
    )
    pdf.attachments[XML_NAME] = spec
    pdf.Root.AF = engine.Array([spec.obj])


def _saved(pdf: "Pdf") -> bytes:
    out = BytesIO()
    pdf.save(out, **import_module("pikepdf.pdfa").resolve_save_kwargs(FLAVOUR, **_CHOSEN))
    return out.getvalue()
