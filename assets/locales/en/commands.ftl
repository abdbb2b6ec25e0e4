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

mend-nothing = { $file }: nothing is wrong with it; nothing was changed.
mend-why = { $file }: { $why }
mend-kept = Mended: { $n } actions are kept, { $lines } ({ $bytes } bytes) dropped; the mark sheet will say so.
mend-original = The damaged file is kept as { $file }

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
trace-curves = { $file }: { $curves } curves
trace-circuit = { $file }: { $variables } variables, { $steps } steps, { $changes } changes from outside or inside
trace-allowed = { $flag } { $typed }: allowed { $min } to { $max }
trace-line = { $file }, line { $line } ({ $text })
trace-too-many = more than 100 000 rows in one action: choose a longer --every
trace-not-written = --csv { $file } cannot be written
trace-not-written-why = --csv { $file } cannot be written: { $why }
