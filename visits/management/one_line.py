"""A message as one printable line, whatever names a document brought into it."""


def one_line(message: str) -> str:
    """Line ends, control signs and halves of a sign (which no terminal can print) are written as escapes."""
    return "".join(sign if sign.isprintable() else ascii(sign)[1:-1] for sign in message)
