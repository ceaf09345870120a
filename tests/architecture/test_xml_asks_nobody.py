"""Whatever reads XML reads no other file and no address: by how each reader is made, and by trying one."""

import ast
import threading
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import pytest
from lxml import etree

from invoicing.documents.e_invoice import _PARSER
from invoicing.domain.bank_file import UnreadableBankFile
from invoicing.domain.camt053 import read_camt053
from tests.architecture.source_tree import name_of, nodes_of, product_files

OURS_ALONE = {
    # The official schemas, files of a package; nothing that anybody sent.
    "invoicing/documents/e_invoice_schema.py",
}


READERS = ("XMLParser", "fromstring", "parse", "XML", "iterparse")
LIBRARIES = ("etree", "ElementTree", "ET", "minidom")


def _parsers(path: Path) -> list[ast.Call]:
    calls = [node for node in nodes_of(path) if isinstance(node, ast.Call)]
    return [
        call
        for call in calls
        if isinstance(call.func, ast.Attribute)
        and call.func.attr in READERS
        and getattr(call.func.value, "id", "") in LIBRARIES
    ]


def test_every_reader_of_xml_is_told_to_resolve_nothing():
    for path in product_files():
        if name_of(path) in OURS_ALONE:
            continue
        for call in _parsers(path):
            said = {keyword.arg: ast.unparse(keyword.value) for keyword in call.keywords}
            if call.func.attr == "XMLParser":
                assert said.get("resolve_entities") == "False", path
                assert said.get("no_network") == "True", path
            else:
                assert len(call.args) == 2 or "parser" in said, f"{path}: {ast.unparse(call)} takes no parser"


@pytest.fixture
def listener():
    """A server on the loopback that counts who asks."""

    class Ear(BaseHTTPRequestHandler):
        def do_GET(self):
            self.server.asked.append(self.path)
            self.send_response(200)
            self.end_headers()

        def log_message(self, *args):
            pass

    server = HTTPServer(("127.0.0.1", 0), Ear)
    server.asked = []
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield server
    server.shutdown()
    thread.join()
    server.server_close()


def test_a_file_that_names_an_address_has_nobody_asked(listener):
    address = f"http://127.0.0.1:{listener.server_port}/dtd"
    for head in (f'<!DOCTYPE a SYSTEM "{address}">', f'<!DOCTYPE a [<!ENTITY % x SYSTEM "{address}"> %x;]>'):
        body = f'<?xml version="1.0"?>{head}<a/>'.encode()
        with pytest.raises(UnreadableBankFile):
            read_camt053(body)
        etree.fromstring(body, _PARSER)
    assert listener.asked == []


def test_an_entity_of_a_file_on_this_machine_stays_unread():
    body = b'<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/hostname">]><a>&x;</a>'
    assert "".join(etree.fromstring(body, _PARSER).itertext()) == "&x;"
