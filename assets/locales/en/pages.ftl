# The help of the command line: what stands in the sources too (a test holds the two together), for whoever translates.
# Names of commands, options and their values are typed alike in every language.
cli-usage = Usage:
cli-usage-options = OPTIONS
cli-usage-command = COMMAND
cli-commands = Commands
cli-arguments = Arguments
cli-options = Options
cli-default = default:
cli-possible-values = possible values:
cli-flag-help = Print help
cli-flag-version = Print version
cli-command-help = Print this message or the help of the given subcommand(s)
cli-value-attempt = ATTEMPT
cli-value-attempts = ATTEMPTS
cli-value-c = C
cli-value-car = CAR
cli-value-car-or-job = CAR-OR-JOB
cli-value-dir = DIR
cli-value-factor = FACTOR
cli-value-file = FILE
cli-value-hex = HEX
cli-value-id-severity = ID=SEVERITY
cli-value-job = JOB
cli-value-k-n = K/N
cli-value-keys = KEYS
cli-value-leaf = LEAF
cli-value-m = M
cli-value-n = N
cli-value-name = NAME
cli-value-out = OUT
cli-value-pack-or-job = PACK-OR-JOB
cli-value-part = PART
cli-value-port = PORT
cli-value-quality = QUALITY
cli-value-s = S
cli-value-screen = SCREEN
cli-value-station = STATION
cli-value-tag = TAG
cli-value-test = TEST
cli-value-text = TEXT
cli-value-unit = UNIT
cli-value-wxh = WxH

cli-about = A workshop in which the air is computed and the faults are hidden
cli-long =
    A workshop in which the air is computed and the faults are hidden.

    Learn to find faults in a car's power-brake vacuum circuit: take a job card, measure, find, repair, prove, hand back, and see whether your readings entitled you to your finding.

cli-after =
    Examples:
      pinhole                                     take a job
      pinhole text first-shift/hum-at-the-lights  take this one
      pinhole mark my.attempt --html mark.html

    Exit codes: 0 done or pass, 1 done but fail, 2 bad input or fault.
    The vehicle maker's data, local rules and licensed practice come before this program.

cli-data-help = Folder that holds assets/ and scenarios/ (else: PINHOLE_DATA, here and above, beside the program)
cli-attempts-help = Folder for attempts (else: your own data folder)
cli-lang-help = Language of what is said, such as en or de (else: that of your settings, else of your system)

cli-text-about = Work on a job in the terminal, in plain words
cli-text-after =
    Examples:
      pinhole text
      pinhole text first-shift/hum-at-the-lights
      pinhole text first-shift/hum-at-the-lights --script my.script --attempt my.attempt
      pinhole text --resume

    A script holds one line of plain words after another, as they are typed at the prompt;
    it stops at a line that is refused, unless the line begins with try. --script - reads it from
    standard input.
    Words piped in go on after a refusal, as at the prompt.
    With a script the exit code is 0 for competent, 1 for not yet competent or unfinished; where the
    pack tells nothing after the hand-back, 0 for handed in.

cli-text-job-help = The job, PACK/JOB
cli-text-script-help = Read the words from a file
cli-text-attempt-help = The attempt's file
cli-text-seed-help = Draw tolerances and instrument errors from this (1 to 32 hexadecimal digits)
cli-text-seat-help = Who works on it, as the class knows them: a number or a name, kept in the attempt's file; with --resume, whose attempt is carried on
cli-text-new-help = Begin a new attempt without asking
cli-text-resume-help = Carry the unfinished attempt on without asking

cli-trace-about = Run the model and write every port's pressure, flow, voltage, current, temperature
cli-trace-after =
    Examples:
      pinhole trace alder --csv sound.csv --for 120 --script key-on.script
      pinhole trace alder --fault hose_b_pinhole=0.3 --for 600 --every 1 --csv leak.csv
      pinhole trace alder --show booster.vacuum --show pump.plus_into_a --plot run.png

    Without a script the key is on and nobody touches anything.
    Columns: t_s; each port's kPa_abs and g/s (out of the part) or V and A (into the part);
    case temperatures in C; pedal_N and travel_mm.

    --circuit begins at the last change of joints, stops or parts; the run is done again
    from there, without the table's rows, and timed.

cli-trace-car-help = The car
cli-trace-fault-help = A fault with its severity; may be given more than once
cli-trace-script-help = Plain words for what is done
cli-trace-every-help = Time between two lines, s
cli-trace-for_s-help = How long to go on after the script, s
cli-trace-csv-help = Where the table goes
cli-trace-plot-help = A picture of what --show names, over time (.svg or .png)
cli-trace-show-help = A port (its pressure or voltage) or a column of the table; may be given more than once
cli-trace-circuit-help = Where the circuit's equations go as numbers, with this run's states, for another solver
cli-trace-circuit_after_script-help = The circuit's stretch begins when the script is done, and lasts --for
cli-trace-altitude-help = Height above the sea, m
cli-trace-ambient-help = Air temperature, C

cli-replay-about = Do an attempt again and compare; with --fault: what would the same actions have shown?
cli-replay-after =
    Examples:
      pinhole replay my.attempt
      pinhole replay my.attempt --fault hose_m_hole=0.8

    A what-if is refused while the attempt is unfinished.

cli-replay-attempt-help = The attempt
cli-replay-fault-help = What if this had been the fault? ID=SEVERITY; may be given more than once
cli-replay-sound-help = What if nothing had been wrong?

cli-mark-about = Mark one attempt or many
cli-mark-after =
    Examples:
      pinhole mark my.attempt
      pinhole mark my.attempt --html mark.html
      pinhole mark class/*.attempt --csv class.csv --json class.json
      pinhole mark class --csv class.csv
      pinhole mark class --shard 2/4 --results shards
      pinhole mark --collect shards --csv class.csv

    The first mark of an attempt is written into its file behind the hand-back, when the file may be written
    and no program has it open; a later mark is compared with it.
    The exit code is 0 when every attempt is competent, 1 when one is not, 2 when a file could not be
    marked: it is named, and the others are marked all the same. Where an instructor has overridden a
    mark, that decision counts.
    A pack that says after_hand_back: Nothing shows its marks here alone, and its attempts' files keep
    none.

    A folder is marked on all cores. Results are kept as they come, so that whoever stops it goes on by
    running it again; the attempts themselves are left as they are, and keep no mark. With --shard each
    machine marks its part, and --collect puts them together to the bytes that one machine would write.

cli-mark-attempts-help = The attempts, or one folder of them
cli-mark-shard-help = Of a folder: every Nth attempt in the order of their names, from the Kth on, for machines that share the work
cli-mark-results-help = Of a folder: where the results are kept as they come (else: marks in the folder)
cli-mark-collect-help = Put the results of all shards together; nothing is marked
cli-mark-html-help = Write the mark sheet as a page (one attempt only)
cli-mark-json-help = Write all numbers as JSON
cli-mark-csv-help = Write one line an attempt

cli-override-about = Say that another total or verdict holds of a marked attempt, with reasons
cli-override-after =
    Examples:
      pinhole override my.attempt --by KM --not-yet --reason "the other bench's notes, word for word"
      pinhole override my.attempt --by KM --total 75 --competent --reason "the gauge hung wrong"

    For instructors. The program's own mark is never changed: the override is a second record behind
    it, and the mark sheet shows both and says which holds. What is not said stays as the program's
    mark has it. Several may be given over time: all stay, the last holds. Each is chained like the rest
    of the file.
    In a pack that says after_hand_back: Nothing the attempt is marked first, and its file then holds
    the mark too.

cli-override-attempt-help = The marked attempt
cli-override-by-help = Your name or initials
cli-override-reason-help = Why
cli-override-total-help = The total that holds, 0 to 100
cli-override-competent-help = Competent holds
cli-override-not_yet-help = Not yet competent holds

cli-prove-about = Prove that the jobs of a pack can be done and not guessed, with their reference plans
cli-prove-after =
    Examples:
      pinhole prove first-shift
      pinhole prove first-shift/hum-at-the-lights --cars 5
      pinhole prove first-shift --html proof.html --write-plans

    For authors and instructors: what is shown names the hidden faults.
    Every test that a job's tool board allows is tried in every car there could be; the planner then does
    the job in cars as attempts draw them. A job takes some minutes. What was proved is kept and not
    proved again until its files change, so that whoever stops it goes on by running it again.
    The exit code is 0 when every job passes, 1 when one does not, 2 when one could not be proved.

cli-prove-of-help = The pack, or one of its jobs as PACK/JOB
cli-prove-cars-help = In how many drawn cars each job is done (1 to 200)
cli-prove-results-help = Where what was proved is kept (else: proofs in your own data folder)
cli-prove-html-help = Write what was found as a page
cli-prove-json-help = Write all numbers as JSON
cli-prove-write_plans-help = Write the reference plans into the pack

cli-mend-about = Keep what is whole of a damaged attempt
cli-mend-after =
    Example:
      pinhole mend my.attempt

    The whole actions before the damage stay, the rest is dropped, and the mark sheet says so from
    then on. The damaged file is kept beside it under a name of its own.

cli-mend-attempt-help = The damaged attempt

cli-tests-about = List what can be tried at a car or in a job, with its minutes and what it needs
cli-tests-after =
    Examples:
      pinhole tests alder
      pinhole tests first-shift/hum-at-the-lights
      pinhole tests alder hold

    Minutes are those of a sound car as it came in, with everything put back at the end: worked, and after
    the plus those in which nobody is needed. In a job they are of its day, and a test for which its tool
    board lacks something has none.
cli-tests-of-help = The car, or a job as PACK/JOB
cli-tests-test-help = One of its tests, to be shown line by line

cli-window-about = Open the window, on the front desk or in a job
cli-window-after =
    Examples:
      pinhole window
      pinhole window first-shift/hum-at-the-lights
      pinhole window --attempt my.attempt

    Without a display or a graphics adapter use: pinhole text

cli-window-job-help = The job, PACK/JOB (else: the front desk)
cli-window-attempt-help = The attempt's file; one that exists is carried on
cli-window-seed-help = Draw tolerances and instrument errors from this (1 to 32 hexadecimal digits)
cli-window-tree-help = Write the accessible tree (role, name, place) here whenever it changes

cli-shot-about = Take a picture of a screen, without a display
cli-shot-after =
    Examples:
      pinhole shot room --station bay --out bay.png
      pinhole shot diagram --lang de --size 1920x1080 --out plan.png
      pinhole shot room --script my.script --out later.png
      pinhole shot mark-sheet --attempt my.attempt --out mark.png
cli-shot-screen-help = The screen
cli-shot-screen-front-desk = Packs and jobs
cli-shot-screen-room = The workshop, room in the middle
cli-shot-screen-diagram = The workshop, line diagram in the middle
cli-shot-screen-both = The workshop, room and line diagram
cli-shot-screen-mark-sheet = The mark sheet
cli-shot-screen-settings = The settings
cli-shot-out-help = Where the picture goes (.png)
cli-shot-size-help = Pixels
cli-shot-lang-help = Language
cli-shot-job-help = The job, PACK/JOB
cli-shot-attempt-help = An attempt to show instead, done again to its end
cli-shot-script-help = Words to play before the picture is taken
cli-shot-station-help = Where the eye is (else: where the work is)
cli-shot-station-desk = The desk with the job card
cli-shot-station-cab = The driver's seat
cli-shot-station-bay = The open bonnet
cli-shot-station-front = Low in front of the car
cli-shot-station-bench = The bench
cli-shot-seed-help = Draw tolerances and instrument errors from this
cli-shot-scale-help = Size of everything, 1.0 to 2.0
cli-shot-quality-help = Quality (else: by the adapter)
cli-shot-quality-low = As on old machines
cli-shot-quality-high = Shadows, ambient occlusion
cli-shot-leaf-help = Leaf on top of the clipboard
cli-shot-leaf-card = The job card
cli-shot-leaf-sheet = The data sheet
cli-shot-leaf-notebook = Notebook and record
cli-shot-leaf-suspicions = Suspicions
cli-shot-leaf-finding = The finding
cli-shot-unit-help = Unit of pressure on the dials: kpa, mbar, inhg
cli-shot-keys-help = Keys pressed before the picture is taken, one after the other: F,Enter,text=booster

cli-bench-about = Measure the model's speed on this machine, or what the window costs
cli-bench-after =
    Examples:
      pinhole bench
      pinhole bench --samples 21 --csv speed.csv
      pinhole bench --window

    Without --window: simulated seconds per processor second for driving, pull-down, overnight hold
    and many cars, memory of a circuit, runs under hypotheses a second; about a minute.
    With it: needs a graphics adapter, a software one will do, and no display.
    Measure a release build on a quiet machine.

cli-bench-samples-help = How often each case is measured
cli-bench-csv-help = Write the table with all digits
cli-bench-window-help = The window: processor time of a frame, time to the first frame, memory
cli-bench-job-help = With --window: the job that is open meanwhile, PACK/JOB
cli-bench-part-help = One part only, told as JSON; the program calls itself with it
cli-bench-part-undrawn = Without a renderer
cli-bench-part-drawn = With the renderer of the window
