"""Which signs a text in XML may hold (XML 1.0, section 2.2)."""

import re

NOT_IN_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""One of them, and no program opens the file."""
