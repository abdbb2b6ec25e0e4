#!/usr/bin/env bash
# A folder of attempts marked as an array job of a batch system: two nodes on this machine, each with half of its cores.
# Every task marks a shard, --collect puts them together, and the bytes are held against one process that marks the
# folder alone. Prints a table (shard, node, attempts, seconds).
#   tests/cluster/run.sh [FOLDER]         default: twelve attempts, played here from scripts with fixed seeds
#   SHARDS=4                              tasks of the array
#   PINHOLE=/whole/path/pinhole           a program that is built already (else: built here, release, no window)
# Needs Debian's slurm-wlm and munge installed, not set up and not running: a munged, a slurmctld and two slurmd of its own
# run with what this script writes into a folder under /tmp, on ports that are free, as whoever calls it. Nothing in /etc
# is read but the users; what it started it ends, by process id.
set -euo pipefail
cd "$(dirname "$0")/../.."
root=$PWD
# Debian puts the daemons where only root's path leads.
PATH=$PATH:/usr/sbin:/sbin

missing=""
for tool in munged slurmctld slurmd sbatch squeue scancel sinfo; do
    command -v $tool >/dev/null || missing+=" $tool"
done
if [ -n "$missing" ]; then
    echo "error: not found:$missing; install the Debian packages slurm-wlm and munge (apt-get install slurm-wlm munge)" >&2
    exit 2
fi
shards=${SHARDS:-4}
if ! [[ $shards =~ ^[1-9][0-9]{0,2}$ ]]; then
    echo "error: SHARDS=$shards: expected a number from 1 to 999" >&2
    exit 2
fi
# Short, because a socket's path may have 107 bytes; open to all for passing, because munged asks for it.
work=$(mktemp -d /tmp/pinhole-cluster.XXXXXX)
chmod 711 "$work"

declare -a daemons=()
job=""
end() {
    local code=$?
    trap - EXIT
    # Tasks first: they are children of the nodes' daemons.
    if [ -n "$job" ]; then scancel "$job" 2>/dev/null || true; fi
    # The other way round than they were started, each given the time to end its children.
    local i
    for ((i = ${#daemons[@]} - 1; i >= 0; i--)); do
        kill "${daemons[i]}" 2>/dev/null || true
        wait "${daemons[i]}" 2>/dev/null || true
    done
    if [ $code = 0 ] || [ ${#daemons[@]} = 0 ]; then rm -rf "$work"; else echo "What the daemons said is kept in $work" >&2; fi
    exit $code
}
trap end EXIT
trap 'exit 130' INT
trap 'exit 143' TERM

pinhole=${PINHOLE:-}
if [ -z "$pinhole" ]; then
    cargo build --release --locked -p game --no-default-features
    pinhole=$root/${CARGO_TARGET_DIR:-target}/release/pinhole
    case ${CARGO_TARGET_DIR:-} in /*) pinhole=$CARGO_TARGET_DIR/release/pinhole ;; esac
fi
[ -x "$pinhole" ] || { echo "error: PINHOLE=$pinhole: no program there" >&2; exit 2; }
# Marking ends with 1 when an attempt is not competent: done all the same.
done_or_not_yet() { local code=0; "$@" || code=$?; [ $code -le 1 ] || { echo "error: exit code $code: $*" >&2; exit 2; }; }

folder=${1:-}
if [ -n "$folder" ]; then
    folder=$(realpath -e "$folder")
else
    folder=$work/class
    mkdir "$folder"
    play() { # job script seed seat
        done_or_not_yet "$pinhole" --data "$root" text "first-shift/$1" --seed "$3" --seat "$4" --script "$2" \
            --attempt "$folder/$4.attempt" >>"$work/played.txt" 2>&1
    }
    echo "Playing twelve attempts ..."
    seat=0
    for seed in 5eed 1; do
        for script in scenarios/first-shift/reference/*.script; do
            seat=$((seat + 1))
            play "$(basename "$script" .script)" "$script" $seed "$(printf 'seat-%02d' $seat)"
        done
    done
    play hum-at-the-lights tests/scripts/guess.script 5eed seat-11
    play hum-at-the-lights tests/scripts/swapper.script 5eed seat-12
fi
attempts=$(find "$folder" -maxdepth 1 -name '*.attempt' ! -name '.*' | wc -l)
[ "$attempts" -gt 0 ] || { echo "error: $folder holds no file that ends in .attempt" >&2; exit 2; }

# Four ports that nobody listens at.
base=$((20000 + $$ % 20000))
while :; do
    taken=""
    for port in $base $((base + 1)) $((base + 2)) $((base + 3)); do
        if (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null; then taken=1; fi
    done
    [ -n "$taken" ] || break
    base=$((base + 4))
done
cores=$(nproc)
cpus=$((cores / 2 > 0 ? cores / 2 : 1))
me=$(id -un)
host=$(hostname -s)
mkdir "$work/state" "$work/node-a" "$work/node-b" "$work/shards"
cat >"$work/slurm.conf" <<CONF
ClusterName=pinhole
SlurmctldHost=$host(127.0.0.1)
SlurmUser=$me
SlurmdUser=$me
AuthType=auth/munge
AuthInfo=socket=$work/munge.socket
CredType=cred/munge
SlurmctldPort=$base
SlurmdPort=$((base + 1))
StateSaveLocation=$work/state
SlurmdSpoolDir=$work/%n
SlurmctldPidFile=$work/slurmctld.pid
SlurmdPidFile=$work/%n.pid
SlurmctldLogFile=$work/slurmctld.log
SlurmdLogFile=$work/%n.log
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
JobAcctGatherType=jobacct_gather/none
AccountingStorageType=accounting_storage/none
SelectType=select/cons_tres
SelectTypeParameters=CR_CPU
SwitchType=switch/none
MpiDefault=none
NodeName=node-a NodeHostname=$host NodeAddr=127.0.0.1 Port=$((base + 2)) CPUs=$cpus
NodeName=node-b NodeHostname=$host NodeAddr=127.0.0.1 Port=$((base + 3)) CPUs=$cpus
PartitionName=all Nodes=node-a,node-b Default=YES MaxTime=INFINITE State=UP
CONF
# What one shard is: the same on any batch system that has an array.
cat >"$work/task.sh" <<'TASK'
#!/usr/bin/env bash
set -euo pipefail
k=$SLURM_ARRAY_TASK_ID
export RAYON_NUM_THREADS=$SLURM_CPUS_PER_TASK TIMEFORMAT='%R %U'
# 1: not all are competent; 2: one cannot be marked, or worse, which --collect finds.
{ time "$PINHOLE" --data "$DATA" mark "$FOLDER" --shard "$k/$SHARDS" --results "$WORK/shards" 2>&1 || [ $? -le 2 ]; } 2>"$WORK/$k.time"
rows=$(grep -c '^{"attempt"' "$WORK/shards/marks-$k-of-$SHARDS.results" || true)
echo "$k $SLURMD_NODENAME $rows $(cat "$WORK/$k.time")" >"$WORK/$k.row"
TASK

(umask 077 && head -c 128 /dev/urandom >"$work/munge.key")
start() { # name, command
    local name=$1
    shift
    "$@" >"$work/$name.out" 2>&1 </dev/null &
    daemons+=($!)
}
start munged munged --foreground --key-file="$work/munge.key" --socket="$work/munge.socket" \
    --pid-file="$work/munge.pid" --log-file="$work/munge.log" --seed-file="$work/munge.seed"
until_true() { # seconds, what, command
    local s
    for ((s = 0; s < $1 * 5; s++)); do
        if "${@:3}"; then return; fi
        sleep 0.2
    done
    echo "error: $2 not there after $1 s" >&2
    tail -n 5 "$work"/*.out >&2
    exit 2
}
until_true 20 "munged's socket" test -S "$work/munge.socket"
export SLURM_CONF=$work/slurm.conf
start slurmctld slurmctld -D
start node-a slurmd -D -N node-a
start node-b slurmd -D -N node-b
idle() { [ "$(sinfo -h -N -t idle -o %N 2>/dev/null | sort -u | wc -l)" = 2 ]; }
until_true 60 "two idle nodes" idle

echo "Marking $attempts attempts as an array of $shards ..."
from=$(date +%s.%N)
job=$(WORK=$work PINHOLE=$pinhole DATA=$root FOLDER=$folder SHARDS=$shards \
    sbatch --parsable --array=1-"$shards" --cpus-per-task="$cpus" --job-name=pinhole \
    --output="$work/task-%a.txt" "$work/task.sh")
gone() { local left; left=$(squeue -h -j "$job" 2>/dev/null) && [ -z "$left" ]; }
until_true "${LIMIT_S:-3600}" "the array's end" gone
to=$(date +%s.%N)
for ((k = 1; k <= shards; k++)); do
    if ! [ -s "$work/$k.row" ]; then
        echo "error: task $k left no row; it said:" >&2
        tail -n 5 "$work/task-$k.txt" >&2
        exit 2
    fi
done
job=""
array_s=$(echo "$from $to" | awk '{ print $2 - $1 }')

export TIMEFORMAT='%R %U'
# Code 2 here means that single files could not be marked; then the table tells it for both.
marked() { "$pinhole" --data "$root" mark "$@" >"$work/said.txt" 2>"$work/progress.txt"; }
code=0
marked --collect "$work/shards" --csv "$work/shards.csv" --json "$work/shards.json" || code=$?
alone_code=0
alone=$({ time marked "$folder" --results "$work/alone" --csv "$work/alone.csv" --json "$work/alone.json"; } 2>&1) || alone_code=$?
[ $code = $alone_code ] || { echo "error: exit code $code collected, $alone_code alone" >&2; exit 1; }
cmp "$work/shards.csv" "$work/alone.csv"
cmp "$work/shards.json" "$work/alone.json"

echo
slurmctld -V
echo "$(date -u +%F), $cores cores, $cpus a node, $("$pinhole" --version)"
echo
echo "| shard | node | attempts | s | processor s |"
echo "|---|---|---|---|---|"
cat "$work"/*.row | sort -n | awk -v n="$shards" -v wall="$array_s" '
    { printf "| %d/%d | %s | %d | %.1f | %.1f |\n", $1, n, $2, $3, $4, $5; rows += $3; cpu += $5 }
    END { printf "| all, from submitted to done | both | %d | %.1f | %.1f |\n", rows, wall, cpu }'
echo "$attempts $alone" | awk '{ printf "| one process alone | none | %d | %.1f | %.1f |\n", $1, $2, $3 }'
echo
echo "$(cat "$work/said.txt")"
echo "Table and sheets: the same bytes collected and alone ($(wc -c <"$work/alone.csv") and $(wc -c <"$work/alone.json"))."
