# The text bench: what it says round what the workshop says. Words that are typed (fit, note, wait until pump stops) and
# short names (hose_m, tee.2) are the same in every language; they stand in these sentences as they are typed.

bench-and = and
bench-example = For example:

bench-attempt = Attempt: { $file }
bench-hint = Type help for the words, car for the car, tools for the tools.
bench-not-handed-back = The car is not handed back. Carry on with:
bench-unfinished = (An unfinished attempt waits in { $file }; carry it on with --resume.)
bench-ask-carry-on = Carry { $file } on?
bench-ask-unfinished = There is an unfinished attempt, { $file }. Carry it on?
bench-ask-mend = Mend it, and carry on from the last whole action?
bench-ask-hand-back = Hand the car back now?
# $yes and $no are the letters below; the capital one is what Return means.
bench-yes-no = [Y/n]
bench-yes = y
bench-yes-long = yes
bench-no = n
bench-no-long = no
bench-yes-or-no = Type y for yes or n for no. [Y/n]
bench-torn = The last line of the attempt was torn off when the program stopped; that action is lost.
bench-carried-on = { $n ->
    [one] Carried on after 1 action.
   *[other] Carried on after { $n } actions.
}
bench-jobs = Jobs:
bench-which-job = Which one? [1]
bench-number-of-job = Type a number from 1 to { $n }.
bench-note-shown = Write down what you read yourself; note shown is for scripts.
bench-given-up = (Given up is a reading too: type note to keep it as it stands.)
bench-first-number = (Only what you note counts. Write what you read, with its unit: note … { $unit })
bench-first-sense = (Only what you note counts: type note to keep it.)
bench-beyond = Not done: { $why }.
bench-no-finding = You have not given a finding yet (help finding).
bench-mark-later = The mark comes after hand back.
bench-next-working = Working out what would tell most …
bench-next-test = Most for its minutes would tell: { $test }.
bench-next-enough = Your notes say enough: give the finding.
bench-next-nothing = No test that can be done here would tell anything worth its minutes.
bench-next-counted = Counted: { $points } points off. Hints left: { $left }.
bench-next-again = Nothing was noted since; it is not counted again.
bench-handed-in = Handed in.
bench-handed-in-what = This pack tells nothing more here. Whoever set the job marks the attempt's file:
bench-marking = The car is handed back. Marking: your actions are done again under every fault …
bench-page = The mark sheet with its plots: { $file }
bench-over = This job is over. Run the program again for another.
bench-no-window = No window: { $why }. Here is the text bench.
bench-the-script = script
bench-not-text = That was no UTF-8 text, so nothing was done. Type the line again.
bench-line-long = Line { $line } has { $bytes } bytes; at most { $most } characters are read, so nothing was done.
bench-line-not-text = Line { $line } is not UTF-8 text, so nothing was done.

# Where one stands, as in the prompt: time, place, minutes.
bench-at-desk = desk
bench-at-cab = cab
bench-at-bay = bonnet
bench-at-front = front
bench-at-bench = bench
bench-walk-desk = (You walk to the desk: 20 s.)
bench-walk-cab = (You walk to the cab: 20 s.)
bench-walk-bay = (You walk to the bonnet: 20 s.)
bench-walk-front = (You walk to the front: 20 s.)
bench-walk-bench = (You walk to the bench: 20 s.)
bench-prompt = { $time } { $place } { $min } min worked>
bench-day = day { $n } { $time }

# What came of an action.
bench-refused = Not done. { $why }
bench-done = Done.
bench-done-min = Done; it took { $min } min.
bench-reading = Reading { $n }: { $what }
bench-noted = Noted: reading { $n }, { $what }: { $value }
bench-entered = Entered in the record for { $line }.
bench-not-entered = It does not fill the line { $line } of the record: { $why }.
bench-found-unknown = Found: nothing; the car stays and is referred on.
bench-found-none = Found: everything inside its limits, sure { $sure }.
bench-found = Found: { $units }, sure { $sure }.
bench-safety-minor = Safety (minor): { $text }
bench-safety-major = Safety (major): { $text }
bench-safety-critical = Safety (CRITICAL): { $text }

# What was looked at; $at is a port or several.
bench-what-mode = { $it } ({ $mode })
bench-what-at = { $it } at { $at }
bench-what-run = pump runs, by stopwatch
bench-what-rest = pump rests, by stopwatch
bench-what-hiss = hiss at { $at }
bench-what-hum = hum
bench-what-touch = touch of { $at }
bench-what-travel = pedal under the foot
bench-what-moved = movement of the held pedal
bench-what-applications = assisted applications
bench-what-lamp = glow of { $it }
bench-what-brakes = base brakes
bench-what-yard = slow drive in the yard
bench-mode-off = off
bench-mode-volt = volt
bench-mode-ohm = ohm
bench-mode-ampere = amp

# What a reading showed, when it is no number.
bench-longer = more than { $s } s
bench-longer-given-up = more than { $s } s: given up
bench-off-scale = off the scale
bench-off-scale-low = off the scale, low
bench-dark = dark
bench-not-written = not written down
bench-short-off = off scale
bench-short-off-low = off scale, low
bench-lower-stop = (against its lower stop)
bench-upper-stop = (against its upper stop)
bench-one-mark = { $unit }; one mark is { $division }
bench-display-dark = the display is dark
bench-level-unclear = unclear
bench-level-more = more than can be told
bench-level-less = less than can be told
bench-level-none = nothing to be perceived

# Papers.
bench-caution = Caution: { $text }
bench-defer = The vehicle maker's data, local rules and licensed practice come before anything this program says. It is practice, not service information.
bench-sheet = Data sheet
bench-sheet-altitude = Above { $m } m the pump may not reach its cut-out: gauge limits are for the day's pressure.
bench-nothing-noted = Nothing noted yet.
bench-suspicion = { $time }  suspicion: { $text }
bench-finding-unknown = finding { $n }: not found, refer on
bench-finding-none = finding { $n }: everything inside its limits, sure { $sure }
bench-finding = finding { $n }: { $units }, sure { $sure }
bench-all-noted = Every reading is in the notebook.
bench-open-readings = Not noted, so not counted. Note one with: note NUMBER VALUE UNIT.
bench-record-limit = Limit: { $text }
bench-record-how = How: { $words }.
bench-record-unmet = Not filled: { $why }.
bench-record-fill = Fill a line with: note VALUE UNIT for LINE. Release checks come after the last change: of a joint, a plug or clamp, a unit, or an instrument in a vacuum line.
bench-how-day = read barometer
bench-how-battery = fit meter red=battery.plus black=battery.minus, meter volt, read meter
bench-how-run = pedal pump 12 200, key on, time run
bench-how-rest = time rest 900, foot off the pedal
bench-how-cut-out = stand by the gauge, wait until pump starts, wait until pump stops, read gauge
bench-how-cut-in = stand by the gauge, wait until pump starts, read gauge
bench-how-build-up = pedal pump 12 200 with the key off, key on, time run
bench-how-drop = pedal pump 12 200 with the key off, pedal press 150, key on, engine idle, wait 10, feel moved
bench-how-reserve = key off, engine stopped, pedal pump 12 200, feel applications
bench-how-no-rise = pedal press 150, engine stop, wait 30, feel moved
bench-how-rest-after = let the pump fill the store, time rest 900
bench-how-yard = brakes, chocks off, extraction off, drive

# Looking round.
bench-engine-stopped = stands
bench-engine-cold = runs at fast cold idle
bench-engine-warm = idles, warm
bench-engine-cruise = cruises
bench-engine-overrun = is on the overrun
bench-engine-open = pulls with the throttle wide open
bench-pedal-free = free
bench-pedal-foot = held by your foot with { $n } N
bench-pedal-prop = held by the prop with { $n } N
bench-key-on = on
bench-key-off = off
bench-chocks-on = in place
bench-chocks-off = away
bench-extraction-on = on the exhaust
bench-extraction-off = on the wall
bench-hum = the pump hums
bench-no-hum = no hum
bench-look = You stand at the { $place }. Key { $key }; the engine { $engine }; pedal { $pedal }; chocks { $chocks }; extraction { $extraction }; { $hum }.
bench-covers-off = Covers off: { $list }.
bench-joints-open = Open joints: { $list }.
bench-pulled = Pulled out: { $list }.
bench-stops = Stops: { $list }.
bench-fitted = Fitted: { $list }.
bench-plug-on = plug on { $at }
bench-clamp-at = clamp at { $at }
bench-fitted-at = { $it } at { $at }
bench-minutes = { $worked } minutes worked, { $waited } waited.

# One part, the tools, the store.
bench-part = { $name }. ({ $place }).
bench-part-behind = { $name }. ({ $place }, behind { $cover }).
bench-part-rubber = Rubber: it may be clamped.
bench-part-bright = Bright metal.
bench-part-joint = { $a } to { $b }
bench-part-joint-open = { $a } to { $b }, open
bench-part-unit = Repair unit { $unit }; { $min } min to replace.
bench-tool-cost = { $min } min to connect
bench-tool-fitted = (fitted)
bench-tool-dial = Dial { $min } to { $max }, one mark is { $division }, class { $class } (it may be wrong by { $wrong } anywhere on the dial).
bench-store-unit = unit
bench-store-spare = spare
bench-store-price = price
bench-store-min = min
bench-store-what = what
bench-can-clean = Can be cleaned: { $list }.
bench-can-reform = Can be re-formed: { $list }.
bench-can-pull = Can be pulled and pushed: { $list }.

# The car as lines.
bench-car-air = Air: port ── joint ── port
bench-car-wiring = Wiring: port ── joint ── port
bench-car-plug = [plug]
bench-car-clamp = [clamp]
bench-car-open = open
bench-car-parts = Parts, and where to stand
bench-car-behind = behind { $cover }
bench-car-rubber = rubber
bench-car-covers = Covers
bench-car-cover = { $name }, { $off } min off, { $on } on
bench-car-cover-off = (off)

# What keeps the bench from beginning or going on.
bench-exists = { $file } exists already; carry it on with --resume, or name another file
bench-no-such-attempt = { $file }: there is no such attempt to carry on
bench-none-unfinished = there is no unfinished attempt of yours in { $folder }
bench-other-seat = { $file } is not of the seat { $seat }
bench-other-job = { $file } is an attempt at { $job }, not at { $wanted }
bench-no-pack = there is no pack
bench-no-job = the pack has no job
bench-screen-gone = nothing is shown any more, so nothing more is done; the attempt is kept
bench-page-failed = the mark stands above and in { $file }; for a page: pinhole mark { $file } --html FILE
bench-terminal = the terminal cannot be read
bench-input = standard input cannot be read: { $why }
bench-endless = standard input, line { $line }: { $bytes } bytes without an end of line; expected words
