#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# postgres.sh FOLDER TABLES QUERY...: a PostgreSQL of its own in FOLDER, reached by a socket there and by no network. Loads
# TABLES/load.sql twice, prints what each query answers as CSV, and stops. Ends with status 77 where Debian's postgresql is
# not installed.
set -euo pipefail
folder=$1
tables=$2
shift 2
bin=$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -1)
if [[ ! -x $bin/initdb ]] || ! command -v psql >/dev/null; then
  echo "skipped: Debian's postgresql is needed" >&2
  exit 77
fi
as=()
mkdir -p "$folder"
if ((EUID == 0)); then
  chown postgres "$folder"
  chmod o+x "$folder/.."
  as=(setpriv --reuid=postgres --regid=postgres --clear-groups)
fi
cd "$folder"
"${as[@]}" "$bin/initdb" -D "$folder/data" -U office -A trust -E UTF8 --no-locale -N >"$folder/../initdb.log"
server=("${as[@]}" "$bin/pg_ctl" -D "$folder/data" -s)
trap '"${server[@]}" -m immediate stop' EXIT
"${server[@]}" -l "$folder/server.log" -w -o "-k '$folder' -c listen_addresses='' -c fsync=off" start
ask=(psql -h "$folder" -U office -d postgres -X -q)
cd "$tables"
for _ in 1 2; do "${ask[@]}" -f load.sql; done
for query in "$@"; do "${ask[@]}" -A -t --csv -c "$query"; done
