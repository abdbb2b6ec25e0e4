# What the commands beside the text bench say: mark, replay, mend, trace. Names of columns, JSON and what is typed
# (commands, options) are the same in every language.

error-is = error: { $what }
count-actions = { $n ->
    [one] 1 action
   *[other] { $n } actions
}
count-readings = { $n ->
    [one] 1 reading
   *[other] { $n } readings
}
count-minute-digests = { $n ->
    [one] 1 minute digest
   *[other] { $n } minute digests
}
count-action-digests = { $n ->
    [one] 1 action digest
   *[other] { $n } action digests
}
count-lines = { $n ->
    [one] 1 line
   *[other] { $n } lines
}

mark-one-page = --html takes one attempt; { $n } are given. For many: --csv or --json
mark-at-work = { $file } ({ $n } of { $all }) …
mark-not-marked = { $file }: not marked
mark-line = { $file }: { $mark }
mark-line-unfinished = not finished
mark-line-competent = competent, { $total } of 100
mark-line-not-yet = not yet competent, { $total } of 100
mark-line-override = { $holds } (decided by { $by }; the program: { $own })

mend-nothing = { $file }: nothing is wrong with it; nothing was changed.
mend-why = { $file }: { $why }
mend-kept = { $n ->
    [one] Mended: 1 action is kept, { $lines } ({ $bytes } bytes) dropped; the mark sheet will say so.
   *[other] Mended: { $n } actions are kept, { $lines } ({ $bytes } bytes) dropped; the mark sheet will say so.
}
mend-original = The damaged file is kept as { $file }

override-written = { $file }: override { $n } stands behind the mark.
override-was = The program's own mark, left as it is: { $mark }
override-now = What holds: { $mark }

# What can be tried at a car.
tests-of = { $car }: { $n ->
    [one] 1 test
   *[other] { $n } tests
}
tests-minutes = Minutes in a sound car as it came in, with everything put back at the end: worked + unattended. Names are those that are typed.
tests-none = { $car }: nobody has written down what can be tried at it ({ $file })
tests-no-such = { $car } has no test called { $name }; known: { $known }
tests-condition = The day, the pedal
tests-air = Air
tests-electric = Current
tests-by-ear = Listening
tests-by-eye = Looking
tests-min = { $min } min
tests-covers = covers off: { $list }
tests-joints = opened: { $list }
tests-units = pulled: { $list }
tests-with = with: { $list }
tests-lacks = the tool board lacks: { $list }
tests-set-up = Set-up
tests-stimulus = Stimulus
tests-readings = Readings
tests-undo = Undo

replay-differs = { $file }: differs at { $where }
replay-same = { $file }: { $actions }, { $readings }, { $minutes } and { $digests } are the same, bit for bit.
replay-digest = state digest { $digest } at { $time }
replay-unfinished = The car has not been handed back; this attempt can be carried on.
replay-no-what-if = { $file }: the car has not been handed back; a what-if is shown only for finished attempts. Carry it on with: pinhole text --attempt { $file } --resume
replay-handed-in = { $file }: handed in. The pack { $pack } tells nothing after the hand-back, so there is no what-if
replay-no-fault = { $car } has no fault { $fault }; known: { $known }
replay-severity = --fault { $fault }={ $typed }: { $param } is allowed from { $min } to { $max } (the catalogue of faults has { $least } to { $most })
replay-sound = everything inside its limits
replay-what-if = What if: { $world }. The same actions, the same tolerances and instruments.
replay-no = no.
replay-reading = reading
replay-was = was shown
replay-now = would have shown
replay-changed = { $readings } would have been different (*).
replay-finding = The finding was: { $finding }

trace-rows = { $file }: { $rows } rows, { $columns } columns
trace-curves = { $curves ->
    [one] { $file }: 1 curve
   *[other] { $file }: { $curves } curves
}
trace-circuit = { $file }: { $variables } variables, { $steps } steps, { $changes } changes from outside or inside
trace-allowed = { $flag } { $typed }: allowed { $min } to { $max }
trace-line = { $file }, line { $line } ({ $text })
trace-too-many = more than 100 000 rows in one action: choose a longer --every
trace-not-written = --csv { $file } cannot be written
trace-not-written-why = --csv { $file } cannot be written: { $why }

# Slips on the command line. $page says where more is told; $near is empty or what may be meant.
slip-page = { $page } tells more
slip-near = ; did you mean { $near }?
slip-no-option = there is no option { $option } here{ $near } ({ $page })
slip-too-many = { $word } is one word too many ({ $page })
slip-without-window = { $typed }: this program was built without the window (feature window)
slip-no-command = there is no command { $typed }{ $near } ({ $page })
slip-empty = { $name } is empty; name it ({ $page })
slip-needs-value = { $name } needs a value behind it ({ $page })
slip-none-of = { $option }: { $value } is none of { $valid }{ $near }
slip-why = { $option }: { $why }
slip-value-why = { $option } { $value }: { $why }
slip-twice = { $name } stands twice; once is enough ({ $page })
slip-conflict = { $name } and { $other } do not go together ({ $page })
slip-missing = { $name } is missing ({ $page })
slip-not-utf8 = a word of the command line is not UTF-8 text; only names of files may be so ({ $page })
slip-not-understood = the command line was not understood ({ $page })
slip-range = expected { $low } to { $high }
slip-whole = expected a whole number
slip-size-of-number = the number is too large or too small
slip-number = expected a number such as 12.5
slip-seed = { $typed } is no seed: expected 1 to 32 hexadecimal digits, for example 5eed
slip-seat = expected 1 to { $most } characters on one line, for example 12
slip-fault = expected ID=SEVERITY, for example hose_b_pinhole=0.3
slip-every = expected 0.01 to 3600 s
slip-pressure = expected kpa, mbar or inhg
slip-key = there is no key { $key }
slip-size = expected WIDTHxHEIGHT, 640x360 to 7680x4320, for example 1280x720

mark-folder-page = --html takes one attempt, not a folder. For a folder: --csv or --json
mark-folder-alone = --shard and --results are for one folder of attempts: name the folder alone
many-folder = the folder { $folder } cannot be read: { $why }
many-name = { $file }: the name is not UTF-8 text; rename the file
many-none = { $folder } holds no file that ends in .attempt
many-cannot = cannot be marked: { $why }
many-stands = marked before
many-progress = { $n } of { $all }: { $file }: { $what }
many-all = { $n ->
    [one] 1 attempt
   *[other] { $n } attempts
}: { $competent } competent, { $not_yet } not yet competent, { $unfinished } not finished, { $failed } cannot be marked
results-trouble = { $file }: { $why }; what is marked already is kept, run it again to go on
results-in-use = { $file } is in use: this shard is being marked already
results-unfinished = { $file }: this shard is not done; run it again to go on
results-strange = { $file } is no whole file of results written by pinhole mark; move it away
results-none = { $folder } holds no file of results (marks-1-of-4.results and so on)
results-missing = { $folder } holds the shards { $here }; expected each from 1/{ $n } to { $n }/{ $n } once and no other
results-versions = { $file } was marked by version { $one }, { $other } by { $two }; mark all shards with one version
slip-shard = expected K/N with K from 1 to N, for example 2/4

# What is wrong with the jobs of a pack.
prove-title = Proof
prove-secret = For authors and instructors: this names the hidden faults.
prove-job = Job
prove-verdict = Verdict
prove-found = Found
prove-par = Par, min
prove-card-short = Card
prove-confirms-short = Confirming
prove-columns = Found: in how many drawn cars the fault can be found. Par: minutes worked + waited of the reference plan with the lines of the record. Card: how probable the complaint alone makes the fault. Confirming: share of the evidence that is had by only seeing for oneself what the customer said.
prove-passes = passes
prove-fails = does not pass
prove-test = Test
prove-adds = Adds, min
prove-expected = Expected, bits
prove-after = Then
prove-likeliest = Likeliest then
prove-truth = Wrong with it: { $units }.
prove-on-card = The complaint alone makes that { $p } probable; likeliest is { $unit } with { $best }. Such cars complain so in { $shows }, sound ones in { $sound }.
prove-solved = Found in { $n } of { $cars } drawn cars, with { $median } of { $all } tests at the median and { $most } at most.
prove-time = Minutes worked + waited: { $plan } the reference plan alone, { $par } with the record; the job gives { $gives }.
prove-confirms = Whoever only confirms the complaint ({ $tests }) has { $p } of the evidence.
prove-late = { $test }, after { $n } minutes
prove-alike-none = When every test there is was done, nothing else looks like it.
prove-alike-each = When every test there is was done, these still look like it: { $list }.
prove-script = The reference attempt is competent in { $n } of { $all } cars; its readings make the truth { $p } probable, it claims { $claims }.
prove-planned = { $test }: { $min } min, { $bits } bits expected; then { $p }, likeliest { $unit } with { $best }
prove-at-work = { $job } …
prove-tried = tests tried in every car: { $n } of { $all }
prove-done = drawn cars done: { $n } of { $all }
prove-played = reference attempt played: { $n } of { $all }
prove-broken = { $job }: not proved
prove-cannot = { $job } cannot be proved: the model cannot go on with its car
prove-few-healthy = Healthy cars: { $n } of { $all } jobs. At least 15 % should be, or “something is broken” is a safe guess.
prove-sum = Jobs that pass: { $n } of { $all }
prove-plan-written = reference plan written: { $file }
