#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# swift.sh FOLDER PORT: OpenStack Swift with its s3api on http://127.0.0.1:PORT, one node and one copy, for trials. One key:
# id "yard:technician", secret "demo-secret", region us-east-1; the bucket "fleet" is made by whoever asks. FOLDER has to be
# on a file system with extended attributes. Ends with status 77 where Debian's swift-proxy, swift-account, swift-container
# and swift-object are not installed. Where memcached is, as with any real Swift, the proxy need not ask for account and
# bucket at each request.
set -euo pipefail
folder=$1
port=$2
for program in swift-proxy-server swift-account-server swift-container-server swift-object-server swift-ring-builder; do
  command -v $program >/dev/null || {
    echo "skipped: $program is not installed" >&2
    exit 77
  }
done
mkdir -p "$folder/disk/d1" "$folder/etc"
cd "$folder/etc"
printf '[swift-hash]\nswift_hash_path_suffix = trial\nswift_hash_path_prefix = trial\n' >swift.conf
export SWIFT_CONF_DIR=$folder/etc
user=$(id -un)
number=1
for kind in account container object; do
  its_port=$((port + number))
  number=$((number + 1))
  swift-ring-builder $kind.builder create 4 1 0 >/dev/null
  swift-ring-builder $kind.builder add --region 1 --zone 1 --ip 127.0.0.1 --port $its_port --device d1 --weight 1 >/dev/null
  swift-ring-builder $kind.builder rebalance >/dev/null
  cat >$kind-server.conf <<EOF
[DEFAULT]
bind_ip = 127.0.0.1
bind_port = $its_port
workers = 0
user = $user
swift_dir = $folder/etc
devices = $folder/disk
mount_check = false
log_address = /dev/null
[pipeline:main]
pipeline = $kind-server
[app:$kind-server]
use = egg:swift#$kind
EOF
  swift-$kind-server $kind-server.conf >"$folder/$kind.log" 2>&1 &
done
cat >proxy-server.conf <<EOF
[DEFAULT]
bind_ip = 127.0.0.1
bind_port = $port
workers = 0
user = $user
swift_dir = $folder/etc
log_address = /dev/null
[pipeline:main]
pipeline = catch_errors cache listing_formats s3api tempauth proxy-server
[app:proxy-server]
use = egg:swift#proxy
account_autocreate = true
[filter:catch_errors]
use = egg:swift#catch_errors
[filter:cache]
use = egg:swift#memcache
memcache_servers = 127.0.0.1:$((port + 4))
[filter:listing_formats]
use = egg:swift#listing_formats
[filter:s3api]
use = egg:swift#s3api
location = us-east-1
[filter:tempauth]
use = egg:swift#tempauth
user_yard_technician = demo-secret .admin
EOF
if command -v memcached >/dev/null; then
  memcached -u "$user" -l 127.0.0.1 -p $((port + 4)) -m 64 >"$folder/memcached.log" 2>&1 &
fi
trap 'kill $(jobs -p) 2>/dev/null' EXIT TERM
swift-proxy-server proxy-server.conf >"$folder/proxy.log" 2>&1 &
wait
