#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# apache.sh FOLDER PORT: Apache httpd with mod_dav on https://localhost:PORT/share, for tests. Makes a throwaway certificate
# authority (FOLDER/ca.pem) and one user, "technician" with the password "demo password". Ends with status 77 where
# Debian's apache2-bin or openssl is not installed.
set -euo pipefail
folder=$1
port=$2
modules=/usr/lib/apache2/modules
if ! command -v openssl >/dev/null || [[ ! -x /usr/sbin/apache2 || ! -e $modules/mod_dav_fs.so ]]; then
  echo "skipped: apache2-bin and openssl are needed" >&2
  exit 77
fi
mkdir -p "$folder/share" "$folder/locks"
cd "$folder"
{
  openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -days 2 -subj '/CN=throwaway authority' \
    -keyout ca.key -out ca.pem
  openssl req -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -subj /CN=localhost -keyout server.key -out server.csr
  openssl x509 -req -in server.csr -CA ca.pem -CAkey ca.key -CAcreateserial -days 2 -out server.pem \
    -extfile <(echo 'subjectAltName=DNS:localhost,IP:127.0.0.1')
} 2>openssl.log
printf 'technician:%s\n' "$(openssl passwd -apr1 'demo password')" >users
who=()
if ((EUID == 0)); then
  chown -R www-data "$folder"
  chmod 755 "$folder"
  chmod o+x "$folder/.."
  who=("User www-data" "Group www-data")
fi
{
  printf '%s\n' "${who[@]}"
  for module in mpm_event authn_core authn_file authz_core authz_user auth_basic ssl dav dav_fs socache_shmcb; do
    [[ -e $modules/mod_$module.so ]] && echo "LoadModule ${module}_module $modules/mod_$module.so"
  done
  cat <<EOF
ServerRoot "$folder"
ServerName localhost
Listen 127.0.0.1:$port
PidFile "$folder/httpd.pid"
ErrorLog "$folder/error.log"
DocumentRoot "$folder"
Mutex file:$folder default
DavLockDB "$folder/locks/dav"
KeepAlive On
MaxKeepAliveRequests 0
SSLEngine on
SSLCertificateFile "$folder/server.pem"
SSLCertificateKeyFile "$folder/server.key"
<Directory "$folder">
  Require all denied
</Directory>
<Directory "$folder/share">
  Dav On
  AuthType Basic
  AuthName share
  AuthUserFile "$folder/users"
  Require valid-user
</Directory>
EOF
} >httpd.conf
exec /usr/sbin/apache2 -d "$folder" -f "$folder/httpd.conf" -DFOREGROUND
