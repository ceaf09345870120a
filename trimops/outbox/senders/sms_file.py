"""Text messages as files on this machine: for trying things out, and for a program beside us that carries them on."""

from pathlib import Path

from trimops.outbox.domain.sms_size import sms_size
from trimops.outbox.senders.ready import Ready, Refused


def write_sms(ready: Ready, folder: Path) -> str:
    """One file a message, named by its key: the number (E.164), how many parts it takes, an empty line, the text.

    Written beside and then renamed, so that whoever watches the folder never reads half of one; a repeat writes the
    same file once more. Refused.
    """
    size = sms_size(ready.body)
    beside, at_last = folder / f".{ready.key}.part", folder / f"{ready.key}.txt"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        beside.write_text(f"To: {ready.address}\nParts: {size.parts}\n\n{ready.body}\n", encoding="utf-8")
        beside.replace(at_last)
    except OSError as fault:
        raise Refused(f"It could not be written to the folder of text messages: {fault.strerror}") from fault
    return "Written to the folder of text messages on this machine; nobody carried it further."
