import pytest
from lxml import etree

from invoicing.documents.e_invoice import cii_xml, ubl_xml
from invoicing.documents.e_invoice_schema import schema_faults


@pytest.mark.parametrize(("write", "element"), [(cii_xml, "ExchangedDocument"), (ubl_xml, "IssueDate")])
def test_the_schema_takes_what_we_write_and_misses_what_is_taken_out(electronic, write, element):
    root = etree.fromstring(write(electronic()))
    assert schema_faults(root) == []
    taken = next(node for node in root.iter() if etree.QName(node).localname == element)
    taken.getparent().remove(taken)
    assert schema_faults(root)


def test_another_document_is_no_e_invoice():
    with pytest.raises(KeyError):
        schema_faults(etree.fromstring(b"<a/>"))
