#!/bin/sh
# The browser tests drive the machine's own Chromium; as root on Debian it is installed when missing.
set -eu
cd "$(dirname "$0")/.."
. .make/apt.sh

has_chromium() {
    for name in chromium chromium-browser google-chrome google-chrome-stable; do
        if command -v "$name" >/dev/null; then return 0; fi
    done
    return 1
}

if has_chromium; then exit 0; fi
bring chromium fonts-dejavu-core
if ! has_chromium; then
    echo "trimops: make test needs Chromium. Install it (Debian: apt-get install chromium fonts-dejavu-core), then run make test again." >&2
    exit 1
fi
