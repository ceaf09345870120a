"""What must be said plainly wherever the watch is spoken of.

Common practice, no source; in line with the HSE's INDG73 on lone work (from memory).
"""

NO_REPLACEMENT = (
    "The watch is no replacement for an emergency call: it only notices that somebody did not check in."
)
DEPENDS = (
    "It hangs on this server, its power and its network, on mail or SMS, and on somebody who reads them. "
    "If one of them fails, nobody is told."
)
DRIVES = "It watches visits. On the road and at home nobody is watched."

PLAINLY: tuple[str, ...] = (NO_REPLACEMENT, DEPENDS, DRIVES)
