#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# bash processes.sh HINGEPIN EMPTY: the program hingepin timed as a process beside one that does nothing, and its peak
# memory on a log of seconds and on logs of hours. Fails if a long log is not weighed or memory grows with it.
set -euo pipefail
export LC_ALL=C.UTF-8
hingepin=$(realpath "$1")
empty=$(realpath "$2")
runs=${RUNS:-50}

for tool in jq /usr/bin/time; do
  command -v "$tool" >/dev/null || { echo "Missing: $tool (Debian packages jq and time)" >&2; exit 2; }
done
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
cd "$folder"
"$hingepin" simulate --demo --out . >files
"$hingepin" calibrate job.json --out calibration.json >report

# Mean processor time (user and system) of a process over many runs, ms.
cpu_ms() {
  local TIMEFORMAT='%3U %3S'
  { time for ((run = 0; run < runs; ++run)); do "$@" >output; done; } 2>&1 |
    awk -v runs="$runs" '{ printf "%.2f", 1000 * ($1 + $2) / runs }'
}
# Peak resident memory, KiB.
peak_KiB() { /usr/bin/time -f %M -o peak "$@" >output && tail -n 1 peak; }

printf '%-46s %10s\n' "process, mean of $runs runs" 'CPU ms'
printf '%-46s %10s\n' 'empty program' "$(cpu_ms "$empty")"
printf '%-46s %10s\n' 'calibrate, three logs of 12 s at 50 Hz' "$(cpu_ms "$hingepin" calibrate job.json --out c.json)"
printf '%-46s %10s\n' 'weigh, one log of 12 s at 50 Hz' "$(cpu_ms "$hingepin" weigh calibration.json load-1.csv)"

# The lift of load-1.csv at 1 kHz in the middle of hours of standing still, with noise of 0.05 bar and 0.5 mV.
long_log() {
  awk -F, -v hours="$1" '
    function noise() { return 2 * rand() - 1 }
    NR == 1 { print; next }
    { for (i = 1; i <= NF; ++i) if ($i == "") next
      ++rows; for (i = 1; i <= NF; ++i) cell[rows, i] = $i
      fields = NF }
    END {
      srand(1)
      last = hours * 3600000; start = last / 2 - 500 * (cell[rows, 1] - cell[1, 1]); at = 1
      for (k = 0; k < last; ++k) {
        t = cell[1, 1] + (k - start) / 1000
        while (at < rows - 1 && t > cell[at + 1, 1]) ++at
        w = (t - cell[at, 1]) / (cell[at + 1, 1] - cell[at, 1]); w = w < 0 ? 0 : w > 1 ? 1 : w
        printf "%.3f", k / 1000
        for (i = 2; i <= fields; ++i)
          printf ",%.4f", cell[at, i] + w * (cell[at + 1, i] - cell[at, i]) + (i == 2 ? 0.0005 : i == 4 ? 0.05 : 0) * noise()
        print ""
      }
    }' load-1.csv
}

printf '\n%-46s %10s  %s\n' 'weigh one log' 'peak KiB' 'mass'
truth_kg=$(jq '.unknown[] | select(.file == "load-1.csv") | .mass_kg' truth.json)
declare -A peak
for hours in 0 1 2; do
  if ((hours)); then
    peak[$hours]=$(long_log "$hours" | peak_KiB "$hingepin" weigh --json calibration.json /dev/stdin)
    name="$hours h at 1 kHz, one lift in the middle"
  else
    peak[0]=$(peak_KiB "$hingepin" weigh --json calibration.json load-1.csv)
    name='12 s at 50 Hz'
  fi
  printf '%-46s %10s  %s\n' "$name" "${peak[$hours]}" "$(jq -r '"\(.mass) ± \(.expanded_uncertainty)"' output)"
  jq -e --argjson truth "$truth_kg" 'def kg: rtrimstr(" kg") | tonumber;
    (.mass | kg) - $truth | fabs' output >off_kg
  jq -e --argjson truth "$truth_kg" 'def kg: rtrimstr(" kg") | tonumber;
    ((.mass | kg) - $truth | fabs) <= (.expanded_uncertainty | kg)' output >within ||
    { echo "The load of $truth_kg kg was not weighed within its uncertainty." >&2; exit 1; }
done
# The buffer of 32768 rows is 4 MiB; growing holds it twice, and finding the lift takes a few columns of it.
((peak[1] - peak[0] <= 12 * 1024)) || { echo 'An hour takes more than the buffer explains.' >&2; exit 1; }
((peak[2] - peak[1] <= 512)) || { echo 'Memory grows with the length of the log.' >&2; exit 1; }
