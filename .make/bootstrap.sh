#!/bin/sh
# Makes .venv as uv.lock says, with nothing but Python 3.11 or newer: uv comes into a small venv of its own.
set -eu
cd "$(dirname "$0")/.."
. .make/apt.sh
UV_VERSION=0.13.9

say() { printf 'trimops: %s\n' "$*" >&2; }
fail() { say "$*"; exit 1; }
is_new_enough() { "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; }
can_make_venv() { "$1" -c 'import ensurepip, venv' 2>/dev/null; }

find_python() {
    for name in ${PYTHON:-} python3 python3.14 python3.13 python3.12 python3.11; do
        if path=$(command -v "$name") && is_new_enough "$path"; then
            echo "$path"
            return
        fi
    done
    fail "needs Python 3.11 or newer; python3 here is $(python3 -V 2>/dev/null || echo missing)." \
        "Debian 12 or newer has it: apt-get install python3 python3-venv. Or name one: make ... PYTHON=/path/to/python3"
}

bring_venv_module() {
    if can_make_venv "$1"; then return; fi
    bring python3-venv
    can_make_venv "$1" || fail "$1 cannot make virtual environments." \
        "Install the package python3-venv (Debian, Ubuntu: apt-get install python3-venv), then run make again."
}

bring_uv() {
    if [ "$(.make/uv/bin/uv --version 2>/dev/null | cut -d' ' -f2)" = "$UV_VERSION" ]; then return; fi
    python=$(find_python)
    bring_venv_module "$python"
    say "installing uv $UV_VERSION into .make/uv"
    rm -rf .make/uv
    "$python" -m venv .make/uv
    .make/uv/bin/python -m pip install --quiet --disable-pip-version-check "uv==$UV_VERSION"
}

# uv does not read pip's settings; a machine that gave pip a certificate file means it for uv as well.
trust_what_pip_trusts() {
    if [ -n "${SSL_CERT_FILE:-}" ]; then return; fi
    certificates=${PIP_CERT:-$(.make/uv/bin/python -m pip config get global.cert 2>/dev/null || true)}
    if [ -f "$certificates" ]; then
        export SSL_CERT_FILE="$certificates"
    elif [ -s /etc/ssl/certs/ca-certificates.crt ]; then
        export SSL_CERT_FILE=/etc/ssl/certs/ca-certificates.crt
    fi
}

bring_uv
trust_what_pip_trusts
unset VIRTUAL_ENV
# Bytecode is written once here: a machine that forbids Python to write it would compile at each start.
export UV_PROJECT_ENVIRONMENT=.venv UV_PYTHON_DOWNLOADS=never UV_COMPILE_BYTECODE=1
# A .venv that works keeps its Python: another would throw all of it away.
if is_new_enough .venv/bin/python; then
    .make/uv/bin/uv sync --frozen --no-progress --quiet
else
    say "installing the packages of uv.lock into .venv (once, some minutes)"
    python=$(find_python)
    .make/uv/bin/uv sync --frozen --no-progress --quiet --python "$python"
fi
say "compiling the planner's search (once, a minute)"
PYTHONPATH=. .venv/bin/python -c "from visits.domain.planning.solve import ready_to_search; ready_to_search()"
touch .venv/.trimops-ready
