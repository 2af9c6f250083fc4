#!/usr/bin/env bash
# What railhand costs beside an empty program, and beside two general-purpose unit calculators where they are installed
# (fend, numbat), on one sum. Figures of one run on one machine: only the ratios carry over.
#   benches/compare.sh [how many starts, 200 where not said]
# RAILHAND=PROGRAM times that one, and builds none.
set -euo pipefail
cd "$(dirname "$0")/.."
starts=${1:-200}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

[ -n "${RAILHAND:-}" ] || cargo build --release --quiet
railhand=${RAILHAND:-target/release/railhand}
printf 'fn main() {}\n' > "$work/empty.rs"
rustc -O -o "$work/empty" "$work/empty.rs"

# Microseconds a start takes, the best of five rounds.
start() {
  local best=999999999
  for _ in 1 2 3 4 5; do
    local from to
    from=$(date +%s%N)
    for ((i = 0; i < starts; i++)); do "$@" > /dev/null 2>&1 < /dev/null; done
    to=$(date +%s%N)
    local each=$(((to - from) / starts / 1000))
    if ((each < best)); then best=$each; fi
  done
  echo "$best"
}
beside() { awk -v a="$1" -v b="$2" 'BEGIN { printf "%.2f", a / b }'; }

empty=$(start "$work/empty")
echo "cold start to answer, $starts starts, best of five:"
printf '  %-28s %7d us\n' "an empty program" "$empty"
ours=$(start "$railhand" say "half of 9-7 1/4")
printf '  %-28s %7d us  %s x the empty one\n' "railhand, a sum" "$ours" "$(beside "$ours" "$empty")"
layout=$(start "$railhand" say "run 14-3 between house and corner")
printf '  %-28s %7d us  %s x the empty one\n' "railhand, a layout" "$layout" "$(beside "$layout" "$empty")"
for other in fend numbat; do
  if command -v "$other" > /dev/null; then
    case $other in
      fend) each=$(start fend "(9 feet + 7.25 inches) / 2 to inches") ;;
      numbat) each=$(start numbat -e "(9 foot + 7.25 inch) / 2 -> inch") ;;
    esac
    printf '  %-28s %7d us  %s x railhand\n' "$other, the same sum" "$each" "$(beside "$each" "$ours")"
  else
    echo "  $other is not installed"
  fi
done

# Piped lines: plain phrases and sums, as text and as JSON.
lines=20000
for ((i = 0; i < lines / 2; i++)); do
  echo "half of 9-7 1/4"
  echo "height: 36\" to the top"
done > "$work/lines"
rate() {
  local from to
  from=$(date +%s%N)
  "$railhand" "$@" < "$work/lines" > /dev/null
  to=$(date +%s%N)
  awk -v n="$lines" -v t=$((to - from)) 'BEGIN { printf "%d", n * 1e9 / t }'
}
echo "piped, $lines lines, half of them sums, half plain phrases:"
printf '  %-28s %7d lines a second\n' "text" "$(rate)"
printf '  %-28s %7d lines a second\n' "JSON" "$(rate --json)"

# Memory of an ordinary job, where GNU time is installed.
if [ -x /usr/bin/time ]; then
  peak=$(/usr/bin/time -f %M "$railhand" say "deck 16 along the house, 12 out" "stairs 4 ft wide in the middle of the front" \
    "36 high, gap under 3, no cap" "2x4 rails" "2x2 balusters between the rails" "parts" "buy" 2>&1 > /dev/null | tail -1)
  printf 'peak memory, a deck with its order: %d KiB\n' "$peak"
fi
size=$(wc -c < "$railhand")
fonts=$(cat src/paper/font/*.ttf | wc -c)
printf 'the program: %d bytes, %d of them the type face of the sheets\n' "$size" "$fonts"
echo "keystrokes, replay, layouts and cut plans: cargo bench"
