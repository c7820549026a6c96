#!/bin/sh
# Upgrade the bot under systemd, as root, from an unpacked release: sh deploy/upgrade.sh
# Builds the new program beside the old one, makes a checked backup, stops the bot, makes a second backup,
# migrates, starts and checks. If any of it fails, the old program and its database come back.
# Settings are read and never written. Other places: PEEL_HOME, PEEL_STATE, PEEL_ENV, PEEL_USER; PEEL_VENV names a
# ready environment instead of building one.
set -eu

home=${PEEL_HOME:-/opt/peel-ledger}
state=${PEEL_STATE:-/var/lib/peel-ledger}
settings=${PEEL_ENV:-/etc/peel-ledger/bot.env}
user=${PEEL_USER:-peel-ledger}
release=$(cd "$(dirname "$0")/.." && pwd)
seconds=${PEEL_CHECK_SECONDS:-90}

say() { printf '%s\n' "$*"; }

# Run a program's command with the bot's settings, as the bot's user: peel FOLDER COMMAND...
peel() (
    program=$1
    shift
    while IFS= read -r line || [ -n "$line" ]; do
        case $line in [A-Z]*=*) export "${line?}" ;; esac
    done < "$settings"
    export XDG_DATA_HOME="${state%/*}" MPLCONFIGDIR=/tmp
    cd "$program"
    if [ "$(id -un)" = "$user" ]; then
        exec .venv/bin/python -m bot "$@"
    fi
    exec setpriv --reuid="$user" --regid="$user" --init-groups .venv/bin/python -m bot "$@"
)

# The SQLite file of the settings; nothing for PostgreSQL.
database_file() {
    url=$(sed -n 's/^DATABASE_URL=//p' "$settings" | tail -n 1)
    case $url in
        '') say "$state/peel-ledger.sqlite" ;;
        sqlite:///*) say "${url#sqlite:///}" ;;
    esac
}

revision() { peel "$1" doctor | sed -n 's/.*, revision \([0-9]*\)$/\1/p'; }

build() {
    rm -rf "$home.new"
    mkdir -p "$home.new"
    cp -r "$release/bot" "$release/storage" "$release/deploy" "$home.new/"
    if [ -n "${PEEL_VENV:-}" ]; then
        ln -s "$PEEL_VENV" "$home.new/.venv"
    else
        python3.11 -m venv "$home.new/.venv"
        "$home.new/.venv/bin/pip" install --quiet --require-hashes --only-binary :all: \
            --requirement "$home.new/deploy/requirements.lock"
    fi
    ( cd "$home.new" && .venv/bin/python -m compileall -q bot storage && .venv/bin/python -m bot.chat.grammar.tables )
}

# Wait until the bot says that it can work; without a port of its own, until it has lived for ten seconds.
works() {
    waited=0
    while [ "$waited" -lt "$seconds" ]; do
        sleep 2
        waited=$((waited + 2))
        systemctl is-active --quiet peel-ledger || return 1
        if grep -q '^LISTEN_ADDRESS=.' "$settings" || grep -q '^TELEGRAM_WEBHOOK_URL=.' "$settings"; then
            if peel "$home" ready > /dev/null 2>&1; then return 0; fi
        elif [ "$waited" -ge 10 ]; then
            return 0
        fi
    done
    return 1
}

back() {
    say "The new version does not work: back to the old one."
    systemctl stop peel-ledger || true
    rm -rf "$home.failed"
    mv "$home" "$home.failed"
    mv "$home.old" "$home"
    now=$(revision "$home.failed" || true)
    if [ "$now" != "$before" ]; then
        file=$(database_file)
        if [ -z "$file" ]; then
            say "The database was migrated from $before to $now. Make an empty database, then:"
            say "  peel restore $kept --into ITS-URL; set DATABASE_URL to it; systemctl start peel-ledger"
            exit 1
        fi
        for end in '' -wal -shm; do
            [ ! -e "$file$end" ] || mv "$file$end" "$file.failed$end"
        done
        peel "$home" restore "$kept"
    fi
    systemctl start peel-ledger
    say "The old version runs again; the new one is in $home.failed."
    exit 1
}

[ -x "$home/.venv/bin/python" ] || { say "There is no installation in $home: see NOTES.md."; exit 1; }
[ -r "$settings" ] || { say "There are no settings at $settings."; exit 1; }

say "Building the new version beside the old one."
build
before=$(revision "$home")
say "Backup with a restore drill, while the bot runs."
peel "$home" backup "$state/backups/" --drill
systemctl stop peel-ledger
# What was logged since the first backup is in this one.
kept=$(peel "$home" backup "$state/backups/before-upgrade-$(date -u +%Y%m%dT%H%M%SZ).backup" | sed -n '1s/: .*//p')
if [ -z "$kept" ]; then
    systemctl start peel-ledger
    say "The backup failed; nothing was changed."
    exit 1
fi
say "Kept for the way back: $kept"

rm -rf "$home.old"
mv "$home" "$home.old"
mv "$home.new" "$home"
peel "$home" migrate || back
systemctl start peel-ledger || back
works || back
say "The new version runs. The old one stays in $home.old, the backup at $kept."
