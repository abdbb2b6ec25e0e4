# The words of the text bench: their help, and what is said when a line is not understood. The words themselves (fit,
# note, wait until pump stops), short names and units are typed alike in every language; numbers may have a point or a comma.
# The English of these stands in the sources too; a test holds the two together.

help-group-paper = Paper
help-group-look = Look round (free)
help-group-states = States that last
help-group-time = Time
help-group-senses = Senses
help-group-instruments = Instruments
help-group-hands = Hands on
help-group-right = Put right
help-group-end = End
help-foot =
    help WORD tells more, with examples. Names such as <hose>, <branch> or <spare>
    may be typed with - or _, and the Tab key completes them. Work and waiting
    cost workshop minutes, papers one each. Only what you note counts as evidence.
    Sleeves and glasses are taken as worn: no word for them.
help-also = Also understood:
help-flag = Print help
help-arg-back = back
help-arg-instrument = instrument
help-arg-joint = joint
help-arg-max = max
help-arg-mode = mode
help-arg-name = name
help-arg-numbers = numbers
help-arg-part = part
help-arg-port = port
help-arg-state = state
help-arg-unit = unit
help-arg-what = what
help-arg-words = words
help-word-card = Read the job card: what the customer said, and the cautions
help-word-card-after = Example: card
help-word-sheet = Read the car's data sheet: limits, switching points, altitude note
help-word-sheet-after = Example: sheet
help-word-chocks = Put the wheel chocks, or take them away
help-word-chocks-state = on or off
help-word-chocks-after = Examples: chocks on · chocks off
help-word-extraction = Hang the exhaust extraction on the tail pipe, or back on the wall
help-word-extraction-state = on or off
help-word-extraction-after =
    Examples: extraction on · extraction off
    Before an engine runs indoors; off before you drive.
help-word-key = Turn the ignition key (on = position 15, the engine need not run)
help-word-key-state = on or off
help-word-key-after = Examples: key on · key off
help-word-engine = Start, run or stop the engine
help-word-engine-state-idle = Warm idle (starts the engine when it stands)
help-word-engine-state-cold = Fast idle of a cold engine
help-word-engine-state-cruise = Steady speed, light throttle
help-word-engine-state-overrun = Throttle closed at speed
help-word-engine-state-open = Throttle wide open
help-word-engine-state-stop = Engine off
help-word-engine-after =
    Examples: engine idle · engine stop
    Needs the key on.
help-word-pedal = Press, prop, release or pump the brake pedal
help-word-pedal-what = press, prop, release, pump
help-word-pedal-numbers = Force in N; for pump: how many times, then the force
help-word-pedal-after =
    Examples:
      pedal press 200     hold it down by foot with 200 N (you stay in the seat)
      pedal prop 150      hold it with the prop, so that you can walk away
      pedal release
      pedal pump 5        five applications of 120 N, a firm stop
      pedal pump 5 300    five of 300 N
help-word-cover = Take a cover off or put it back
help-word-cover-words = The cover, then on or off
help-word-cover-after = Examples: cover <cover> off · cover <cover> on
help-word-open = Open a joint: pull a hose off, unplug a connector, undo a terminal
help-word-open-joint = A joint, or a port that belongs to just one joint
help-word-open-after =
    Examples: open <joint> · open <hose>.b
    The word car shows all joints. Pump the pedal empty before you open an air joint.
help-word-join = Make a joint again
help-word-join-words = A joint, or a port that belongs to just one joint
help-word-join-after = Example: join <joint>
help-word-plug = Put a rubber plug on an open port
help-word-plug-port = The port: part.port
help-word-plug-after = Example: plug <branch_3>   (after opening its joint)
help-word-clamp = Squeeze a rubber hose shut beside a port with a hose clamp
help-word-clamp-port = The port: part.port
help-word-clamp-after =
    Example: clamp <hose>.a
    Rubber only: a clamp cracks hard pipe.
help-word-free = Take a plug or a clamp away
help-word-free-port = The port: part.port
help-word-free-after = Example: free <hose>.a
help-word-unplug = Unplug a connector (like open), or take a plug out of a port (like free)
help-word-unplug-name = A joint or a plugged port
help-word-unplug-after = Examples: unplug <plug> · unplug <branch_3>
help-word-pull = Pull a plug-in unit (relay, fuse) out of its socket
help-word-pull-unit = The unit
help-word-pull-after = Examples: pull relay · pull fuse
help-word-push = Push a plug-in unit (relay, fuse) back into its socket
help-word-push-unit = The unit
help-word-push-after = Example: push relay
help-word-swap = Replace a unit with a spare from the store
help-word-swap-words = The unit, then (with) the spare
help-word-swap-after =
    Examples: swap <unit> with <spare> · swap <unit>
    The word store shows the spares and their prices. A part you throw away costs, also when it was good.
help-word-clean = Clean a unit: contacts, earth points, valve seats
help-word-clean-unit = The unit
help-word-clean-after = Example: clean <cleaned>
help-word-reform = Re-form a hose with hot air so that its bend fits again (a makeshift)
help-word-reform-unit = The hose unit
help-word-reform-after = Example: reform <bend>
help-word-fit = Connect an instrument
help-word-fit-words = The instrument, then where its ends go
help-word-fit-after =
    Examples:
      fit gauge <branch>                      tees in beside a joint, or sits on an open port
      fit handpump <booster>
      fit meter red=<live> black=<earth>    or: fit meter <live> <earth>
      fit lamp <plus> <coil>
      fit infrared <pump>                     point the infrared thermometer
    The word tools shows the instruments, the word car shows the ports.
help-word-take = Take an instrument off and put it back on the board
help-word-take-words = The instrument
help-word-take-after = Examples: take gauge · take meter off
help-word-meter = Set the multimeter: volt, ohm (dead circuits only), amp (through its fuse), off
help-word-meter-mode-amp = Amperes through the fused socket
help-word-meter-instrument = Which meter, if there are several
help-word-meter-after = Examples: meter volt · meter ohm · meter amp · meter off
help-word-press = Hold down the button of the push-button lead, or the release lever of the hand pump
help-word-press-instrument = The instrument
help-word-press-after =
    Examples: press button · press handpump (air goes in slowly)
    For the brake pedal say: pedal press 200.
help-word-let = Let go of the button or the release lever
help-word-let-words = The instrument
help-word-let-after = Example: let button
help-word-stroke = Stroke the hand pump
help-word-stroke-words = The instrument and the number of strokes
help-word-stroke-after = Example: stroke handpump 10
help-word-read = Read an instrument: a dial, a display, the barometer on the wall
help-word-read-instrument = The instrument
help-word-read-after =
    Examples: read gauge · read meter · read barometer
    A reading counts only when you note it.
help-word-hiss = Listen for a hiss at a part through the listening tube
help-word-hiss-part = The part
help-word-hiss-after =
    Example: hiss <hose>

    A hiss is air going in from the room: it needs vacuum in the store and a hole
    that is not too small, and air that goes from one part to another inside is not heard.
    Nothing heard is therefore weak evidence.
help-word-hum = Listen whether the pump runs
help-word-hum-after = Example: hum
help-word-touch = Touch a part and feel how warm it is
help-word-touch-part = The part
help-word-touch-after = Example: touch <pump>
help-word-feel = Feel the brake pedal
help-word-feel-what-pedal = How far down the held pedal stands
help-word-feel-what-moved = How the held pedal moved when the engine was last started or stopped
help-word-feel-what-applications = How many assisted applications the last pumping gave
help-word-feel-after =
    Examples:
      feel pedal           how far down the held pedal stands
      feel moved           how it moved when the engine was last started or stopped
      feel applications    how many assisted applications the last pumping gave
help-word-look = Look around; or look at a part, a lamp, or over the base brakes
help-word-look-what = Nothing, a part, a lamp, or brakes
help-word-look-after =
    Examples:
      look           what is open, fitted and switched on (free)
      look <hose>    where it is, what it is made of and joined to (free)
      look lamp      does it glow?
      look brakes    fluid level, hoses, discs and pads, firmness without assist
help-word-brakes = Look over the base brakes: fluid, hoses, discs, pads, firmness without assist
help-word-brakes-after = Example: brakes
help-word-drive = Drive slowly in the yard and brake
help-word-drive-after = Example: drive   (chocks away, engine idling, everything joined)
help-word-time = Time the pump with the stopwatch; you may give the longest time you will wait, in seconds
help-word-time-what-run = From now (or the next start) until the pump stops
help-word-time-what-rest = From now (or the next stop) until the pump starts again
help-word-time-max = Longest time to wait
help-word-time-after = Examples: time run 120 · time rest 900 · time rest 30min
help-word-wait = Wait a while, or until something can be heard or seen
help-word-wait-words = A time; or until, what, and the longest time
help-word-wait-after =
    Examples:
      wait 30
      wait 10min
      wait until pump stops 120     give up after 120 s
      wait until pump starts
      wait until lamp out
help-word-overnight = Leave the car standing overnight: 12 hours, key and engine off
help-word-overnight-after = Example: overnight
help-word-note = Write a reading into the notebook: only what is noted counts
help-word-note-words = Number of the reading, value with unit, for line
help-word-note-after =
    Examples:
      note -58 kPa                  the last reading, with its unit and sign
      note 7 100.6 kPa for day       reading 7, for the line day of the record
      note                          the last reading, when it was felt, heard or seen
      note for drop                 the same, for a line of the record
    The word list shows what you have not noted, the word record shows the lines.
    In scripts: note shown [for LINE] writes what was shown.
help-word-suspect = Note a suspicion in your own words (never marked)
help-word-suspect-words = The text
help-word-suspect-after = Example: suspect "a leak at the booster"
help-word-finding = Say what is wrong and how sure you are. The first finding is locked by the first repair
help-word-finding-words = Units, then sure and a number
help-word-finding-after =
    Examples:
      finding <unit> sure 0.80
      finding pump strap sure 0.60    both are outside their limits
      finding none sure 0.80           everything is inside its limits
      finding unknown                  not found: the car stays and is referred on
    Sure is 0.40, 0.60, 0.80 or 0.95. A wrong finding said too surely costs most.
    Where the school fixes how sure, leave it out.
help-word-hand = Hand the car back to the customer: the job is over
help-word-hand-back = back
help-word-hand-after = Example: hand back   (after the release checks)
help-word-car = Show the car: parts, ports and joints
help-word-car-after = Example: car
help-word-tools = Show the instruments on the tool board
help-word-tools-instrument = One of them
help-word-tools-after = Examples: tools · tools gauge
help-word-store = Show the spares in the store, and what can be cleaned or re-formed
help-word-store-after = Example: store
help-word-notebook = Show the notebook
help-word-notebook-after = Example: notebook
help-word-list = List the readings that are not in the notebook yet
help-word-list-after = Example: list
help-word-next = Ask which test would tell most now; each time costs points
help-word-next-after = Example: next
help-word-record = Show the lines of the record and which are filled
help-word-record-after = Example: record
help-word-mark = Show the mark sheet, after hand back
help-word-mark-after = Example: mark
help-word-quit = Leave the workshop; the attempt is kept and can be carried on
help-word-quit-after = Example: quit

# A line that is not understood.
plain-unknown-word = I do not know the word { $word }; { $hint }
plain-too-long = a line of { $count } characters; at most { $most } are read
plain-shape = { $problem }; for example: { $example }
plain-all-words = type help to see all words
plain-did-you-mean-word = did you mean { $near }? (help shows all words)
plain-did-you-mean = did you mean { $near }?
plain-did-you-mean-two = did you mean { $first } or { $second }?
plain-did-you-mean-three = did you mean { $first } or { $second } or { $third }?
plain-did-you-mean-four = did you mean { $first } or { $second } or { $third } or { $fourth }?
plain-known = known: { $names }
plain-list-more = { $names } and { $left } more
plain-list-none = none
plain-no-part = there is no part called { $name }; { $hint }
plain-no-port = there is no port called { $name }; { $hint }
plain-no-joint = there is no joint called { $name }; { $hint }
plain-no-unit = there is no unit called { $name }; { $hint }
plain-no-cover = there is no cover called { $name }; { $hint }
plain-no-record = there is no line of the record called { $name }; { $hint }
plain-no-spare = there is no spare called { $name }; { $hint }
plain-no-instrument = there is no instrument called { $name }; { $hint }
plain-has-no-part = this job has no part
plain-has-no-port = this job has no port
plain-has-no-joint = this job has no joint
plain-has-no-unit = this job has no unit
plain-has-no-cover = this job has no cover
plain-has-no-record = this job has no line of the record
plain-has-no-spare = this job has no spare
plain-has-no-instrument = this job has no instrument
plain-has-no-multimeter = this job has no multimeter
plain-has-no-hand-pump = this job has no hand pump
plain-a-part = a part of the car
plain-a-joint = a joint of the car
plain-a-cover = a cover
plain-an-instrument = an instrument
plain-is-a-name = { $word } is { $what }: say what to do with it
plain-not-taken = { $word } does not take { $value }: say one of { $valid }
plain-not-taken-near = { $word } does not take { $value }: did you mean { $near }?
plain-one-more = { $word } needs one more word: one of { $valid }
plain-not-enough = { $word } alone is not enough
plain-too-much = { $word } does not understand { $what }
plain-not-understood = { $word } was not understood
plain-no-line = that is no whole line
plain-walk = you walk by yourself to where the work is; just say what to do
plain-say-how = say how: fit an instrument and read it, time the pump, or feel, hear and look
plain-say-line = say: { $line }
plain-nothing-joined = nothing is joined there
plain-several-joints = several joints meet there: { $names }
plain-part-joints = that part has the joints { $names }
plain-part-ports = that part has { $names }
plain-store-none = the store has no spare for { $unit }
plain-store-several = the store has several spares for { $unit }: { $names }
plain-join-one = join one joint at a time, by its name
plain-take-one = take one instrument at a time
plain-let-what = let go of what?
plain-pedal-word = the pedal has a word of its own
plain-pedal-many = too many words after pedal
plain-no-force = { $typed } is no force in N
plain-how-many-times = how many times?
plain-how-many-strokes = how many strokes?
plain-number-of-applications = number of applications: { $why }
plain-number-of-strokes = number of strokes: { $why }
plain-cover-off-or-on = say whether the cover { $cover } comes off or on
plain-which-cover = say which cover, and off or on
plain-swap = say the unit and the spare
plain-fit = say the instrument and where it goes
plain-fit-where = where does { $it } go?
plain-watch = the stopwatch is in your pocket; say for example: time rest 900
plain-read-in-place = it is read where it is
plain-not-fitted = { $it } is not fitted to anything; { $how }
plain-one-end = { $it } has one end
plain-ends = { $it } has { $n } ends
plain-no-end = { $it } has no end called { $end }; it has { $ends }
plain-no-end-of-two = { $it } has no end called { $end }; it has { $first } and { $second }
plain-how-long = how long?
plain-wait-until = you can wait until pump stops, pump starts, lamp out or lamp on
plain-no-unit-of-time = { $typed } is no unit of time (s, min, h)
plain-no-time = { $typed } is no time from 0 to { $most } s
plain-no-reading-yet = there is no reading to note yet: read, time, feel or hear something first
plain-no-reading = there is no reading { $id }; so far there are 1 to { $last }. If { $id } is the value, add its unit
plain-reading-is-number = reading { $id } is a number: write what you read, with its unit
plain-note-for = after for, say the line of the record
plain-note-no-unit = write { $typed } with its unit (kPa, V, A, ohm, C, s, deg, mm)
plain-note-is = a note is: number of the reading if it is not the last, value and unit, for and a line of the record
plain-no-such-unit = { $typed } is no unit of this workshop (kPa, V, A, ohm, C, s, deg, mm)
plain-which-unit = say which unit is outside its limits, or none
plain-how-sure = say how sure you are: sure 0.40, 0.60, 0.80 or 0.95
plain-no-step = { $typed } is no step of certainty: { $steps }
plain-sure-fixed = the school fixes how sure a finding is, at { $fixed }: give it without sure

# Numbers.
number-none = { $typed } is no number; write it in digits, for example 12.5
number-not-finite = { $typed } is not a finite number; write one in digits, for example 12.5
number-not-in-tens = { $typed } is not written in tens; use the digits 0 to 9, for example 16
number-too-long = { $typed } is a number of { $count } characters; at most { $most } are read
number-too-large = { $typed } is too large; numbers here go up to { $most }
number-not-whole = { $typed } is no whole number; write one from { $low } to { $high }
number-not-finite-nor-whole = { $typed } is not a finite number; write a whole one from { $low } to { $high }
number-outside = { $typed } is outside { $low } to { $high }
