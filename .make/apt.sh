# Sourced: `bring PACKAGE...` installs Debian packages where that can be done without asking anybody.
bring() {
    if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null; then return 0; fi
    echo "trimops: installing $*" >&2
    apt-get update -qq >/dev/null 2>&1 || echo "trimops: apt-get update had faults; going on with the lists there are" >&2
    if ! said=$(DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" 2>&1); then
        echo "$said" >&2
    fi
}
