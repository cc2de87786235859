#!/usr/bin/env bash
# Runs a command against a PostgreSQL of its own, in a new folder that goes with it:
#     tools/with_postgres.sh make test-shared
# Sets DATABASE_URL for the command. PostgreSQL will not run as root, so root hands it to the user `postgres`.
set -euo pipefail
programs=$(ls -d /usr/lib/postgresql/*/bin | sort -V | tail -1)
folder=$(mktemp -d /tmp/stemward-postgres.XXXXXX)
as=()
if [ "$(id -u)" -eq 0 ]; then
  chown postgres "$folder"
  as=(runuser -u postgres --)
fi
stop() {
  (cd / && "${as[@]}" "$programs/pg_ctl" -D "$folder/data" -m immediate stop >/dev/null 2>&1) || true
  rm -rf "$folder"
}
trap stop EXIT
port=${STEMWARD_PG_PORT:-5544}
(
  cd /
  "${as[@]}" "$programs/initdb" -D "$folder/data" -A trust -U test --no-sync >/dev/null
  "${as[@]}" "$programs/pg_ctl" -D "$folder/data" -w -l "$folder/log" \
    -o "-p $port -k $folder -c listen_addresses=127.0.0.1" start >/dev/null
  "${as[@]}" "$programs/createdb" -h 127.0.0.1 -p "$port" -U test stemward
)
DATABASE_URL="postgres://test@127.0.0.1:$port/stemward" "$@"
