# shellcheck shell=bash
# What a machine needs, installed when missing, saying what and why. Read by deploy/studio and deploy/test.

say() { echo "$*" >&2; }

stop() {
    say "$*"
    exit 1
}

# install WHY PACKAGE...  as root, else through sudo, else says the exact command.
install() {
    local why=$1
    shift
    command -v apt-get >/dev/null || stop "Needed: $* ($why). This machine has no apt-get; install it by its own means and start again."
    say "Installing $* ($why)."
    local as_root=()
    if [ "$(id -u)" != 0 ]; then
        if ! command -v sudo >/dev/null || ! { sudo -n true 2>/dev/null || [ -t 0 ]; }; then
            stop "That needs root. Run this as root, then start again: apt-get update && apt-get install -y --no-install-recommends $*"
        fi
        as_root=(sudo)
    fi
    # The list of packages may be absent or old: it is fetched when the first try fails.
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$@" >/dev/null 2>&1 \
        || { "${as_root[@]}" apt-get update -q >/dev/null \
            && "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$@" >&2; } \
        || stop "apt-get could not install $*; what it said is above."
}

need_dotnet() {
    # A dotnet installed for one user stands in ~/.dotnet and may not be on PATH.
    if ! command -v dotnet >/dev/null && [ -x "${DOTNET_ROOT:-$HOME/.dotnet}/dotnet" ]; then
        export DOTNET_ROOT=${DOTNET_ROOT:-$HOME/.dotnet}
        export PATH="$DOTNET_ROOT:$PATH"
    fi
    if ! command -v dotnet >/dev/null || ! dotnet --list-sdks | grep -q '^10\.'; then
        stop "The .NET 10 SDK is missing; the studio is built with it. Install it as described at https://learn.microsoft.com/dotnet/core/install/linux and start again."
    fi
    if [ -z "${DOTNET_ROOT:-}" ]; then
        DOTNET_ROOT=$(dirname "$(readlink -f "$(command -v dotnet)")")
        export DOTNET_ROOT
    fi
    export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
}

have_postgres() {
    [ -n "${STUDIO_PG_BIN:-}" ] || { command -v initdb && command -v pg_ctl && command -v postgres; } >/dev/null \
        || compgen -G '/usr/lib/postgresql/*/bin/initdb' >/dev/null
}

need_postgres() {
    have_postgres && return
    # The package would make and start a database of its own; the studio keeps one itself.
    local settings=/etc/postgresql-common/createcluster.conf
    install "settings of the database server" postgresql-common
    if [ -w "$settings" ]; then
        sed -i 's/^#*create_main_cluster.*/create_main_cluster = false/' "$settings"
    fi
    install "the database server; the studio keeps a private one in its data folder" postgresql
}

need_chromium() {
    command -v chromium >/dev/null && return
    install "the browser that the tests drive" chromium
}

need_poppler() {
    command -v pdftoppm >/dev/null && return
    install "the tests turn printed labels into pictures and read their codes back" poppler-utils
}
