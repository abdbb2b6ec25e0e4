# What can be wrong with a data file (cars, instruments, spares, diagrams, rooms, packs, jobs). Key paths, keys and
# words of the files are the same in every language. The English stands in the sources too; a test holds the two together.

# Where: $what is one of the sentences below.
data-fault = { $file }: { $what }
data-fault-at = { $file }:{ $line }:{ $column }: { $what }
data-lines =
    { $all }
    { $next }
data-more = and { $more } more
data-more-in-file = and { $more } more; mend these first
data-all-well = nothing is wrong
data-file-names = file names
data-all-low = tolerances, every serviceable at its low end
data-all-high = tolerances, every serviceable at its high end
data-sum-of-weights = weights (sum without economy)

# Files and folders that are not read.
data-not-read = cannot be read ({ $why })
data-not-regular = is { $what }, not a regular file
data-leaves-folder = is a link that leaves the data folder; put the file itself there
data-not-a-name = the name of this file is no plain text; rename it with a to z, 0 to 9 and `-` or `_`
data-too-large = { $bytes } bytes; at most { $max } bytes are read
data-not-text = line { $line }, byte { $at } is not UTF-8; save the file as UTF-8 text
data-too-many-files = { $count } files in this folder; at most { $max } may stand there
data-too-many-packs = { $count } packs in this folder; at most { $max } may stand there

# Not written as such a file is.
data-words-stations = the stations
data-words-parts = the kinds of part
data-words-record = the kinds of record line
data-words-tests = the kinds of test
data-words-displays = the displays
data-words-symptoms = the symptoms
data-words-sheets = the sheets
data-words-sides = the sides
data-words-bodies = the bodies
data-words-colours = the colours of a wire
data-words-ends = the ends of a wire
data-words-covers = the shapes of a cover
data-words-fixtures = the fixtures
data-words-other = the words that may stand here
data-this-block = this block
data-syntax-near = { $expected }; near `{ $near }`
data-truncated = the file ends in the middle of a value; was it cut off?
data-unknown-key = `{ $inside }` has no key `{ $key }`; known keys: { $known }
data-missing-key = `{ $inside }` needs the key `{ $key }`
data-key-twice = the key `{ $key }` of `{ $inside }` stands twice
data-unknown-word = `{ $word }` is none of { $of }: { $known }
data-other-block = expected the block `{ $block }( … )`, found `{ $found }`
data-expected-list = expected a list, [ … ]
data-expected-end-of-list = expected a comma or the ] that ends the list
data-expected-bool = expected true or false
data-expected-comma = expected a comma
data-expected-number = expected a number
data-expected-whole = expected a whole number
data-expected-size = expected a whole number from 0 to 4294967295
data-expected-key-value = expected key: value
data-expected-block = expected a block, ( … )
data-expected-end-of-block = expected a comma or the ) that ends the block
data-expected-text = expected a text in quotation marks
data-expected-word = expected a key or a word
data-no-such-escape = no such escape in a text; a backslash itself is written twice
data-open-remark = a remark /* has no end */
data-expected-end = expected the end of the file
data-too-deep = blocks stand too deep inside one another
data-length = { $found } values are too few or too many here
data-no-ron = this is not written as RON
data-expected-named = expected the block `{ $block }( … )`
data-expected-in-range = expected a whole number in range
data-expected-keys = expected a block of keys with values
data-expected-values = expected values in brackets, (1, 2)
data-expected-listed = expected one of the words that may stand here
data-expected-other = expected another value

# Values. $range is a range, $expected what should stand there.
data-wrong-schema = schema: { $found }; this program reads schema { $expected }
data-out-of-range = { $path } = { $value }, allowed { $range }
data-not-finite = { $path } = { $value } is not a finite number, allowed { $range }
data-range-reversed = { $path } = ({ $low }, { $high }): the low end must come first
data-too-many = { $path }: { $count } { $what }; at most { $max } may stand there
data-too-long = { $path }: { $count } characters; at most { $max } may stand there
data-control = { $path }: character { $place } is { $found }, a control that must not stand in a text
data-control-one-line = { $path }: character { $place } is { $found }, a control that must not stand in a text (one line is meant)
data-empty = { $path } is empty; { $expected }
data-wrong-unit = { $path } = { $unit } is not a unit; known: { $known }
data-no-bound = { $path } has neither `min` nor `max`; a limit needs at least one
data-no-step = { $path } = { $value } is no step of certainty; write 0.40, 0.60, 0.80 or 0.95
data-no-direction = { $path } = (0, 0, 0) points nowhere; write a way, for example (0, 1, 0) for upwards
data-range = { $min } to { $max }
data-range-unit = { $min } to { $max } { $unit }
data-unit-money = shop money
data-unit-weight = (relative weight)
data-unit-metre = m
data-unit-degree = degrees
data-unit-of-hundred = of 100
data-unit-grid-step = grid steps
data-unit-quarter-turn = quarter turns
data-unit-of-span = % of span
data-unit-of-reading = % of reading
data-unit-count = counts of the last digit
data-unit-instrument = in the instrument's unit
data-want-car-name = write the car's name in words
data-want-part-name = write the part's name in words
data-want-part-label = write the part's name in a word or two
data-want-cover-name = write the cover's name in words
data-want-unit-name = write the unit's name in words
data-want-fault-name = write the fault's name in words
data-want-spare-name = write the spare's name in words
data-want-tests = a file of tests has one at least
data-want-test-name = write the test's name in words
data-want-instrument-name = write the instrument's name in words
data-want-instrument-help = say in a sentence what it is for and what it cannot do
data-want-parts = a car has parts
data-want-unit-parts = a repair unit has at least one part
data-want-cautions = a data sheet has cautions
data-want-caution = write the caution as a sentence
data-want-limit = say what is measured and how
data-want-record = say what is recorded and under which condition
data-want-title = write a title
data-want-author = say who wrote it
data-want-licence = state the licence of the texts
data-want-language = state the language as a tag: en
data-want-jobs = a pack has at least one job
data-want-framework = name the framework
data-want-edition = state its edition
data-want-code = state the code within it
data-want-complaint = write what the customer said
data-want-hazards = write the cautions of this job
data-want-debrief = write what is told after the hand-back
data-want-job = write the job as pack/job
data-want-line = write a line of plain words, as at the prompt

# Names.
data-no-part = there is no part called { $name }
data-no-port = there is no port called { $name }
data-no-param = there is no parameter called { $name }
data-no-joint = there is no joint called { $name }
data-no-cover = there is no cover called { $name }
data-no-line = there is no hose, wire or joint called { $name }
data-no-unit = there is no repair unit called { $name }
data-no-fault = there is no fault called { $name }
data-no-limit = there is no limit called { $name }
data-no-record = there is no record line called { $name }
data-no-instrument = there is no instrument called { $name }
data-no-spare = there is no spare called { $name }
data-no-test = there is no test called { $name }
data-no-car = there is no car called { $name }
data-no-pack = there is no pack called { $name }
data-no-job = there is no job called { $name }
data-twice-part = the part { $name } is already there
data-twice-port = the port { $name } is already there
data-twice-param = the parameter { $name } is already there
data-twice-joint = the joint { $name } is already there
data-twice-cover = the cover { $name } is already there
data-twice-line = the hose, wire or joint { $name } is already there
data-twice-unit = the repair unit { $name } is already there
data-twice-fault = the fault { $name } is already there
data-twice-limit = the limit { $name } is already there
data-twice-record = the record line { $name } is already there
data-twice-instrument = the instrument { $name } is already there
data-twice-spare = the spare { $name } is already there
data-twice-test = the test { $name } is already there
data-twice-car = the car { $name } is already there
data-twice-pack = the pack { $name } is already there
data-twice-job = the job { $name } is already there
data-unknown-name = { $path }: { $none }; known: { $known }
data-name-twice = { $path }: { $there }, at { $first }
data-bad-name = { $path } = { $name } is not a short name: use a to z, 0 to 9, `{ $joiner }`, beginning with a letter, at most 60
data-bad-script = reference (a name ending in .script) = { $name } is not a short name: use a to z, 0 to 9, `-`, beginning with a letter, at most 60
data-not-the-file = id = { $id }, but the file's name asks for { $expected }

# Cars, their catalogue, what a job hides.
data-carries-air = air
data-carries-current = current
data-no-part-at-all = nothing
data-too-many-states = the parts have { $count } state variables; at most { $max } can be computed: leave out what no job needs
data-too-many-terminals = the parts have { $count } electrical ports; at most { $max } can be computed: leave out what no job needs
data-mixed-joint = { $path } joins { $a } ({ $of_a }) to { $b } ({ $of_b }); both must carry the same
data-joined-to-itself = { $path } joins { $port } to itself
data-port-taken = { $path }: the air port { $port } is already joined by { $first }; branch air with a Tee
data-switch-reversed = { $path }: cut_in_kpa = { $on } must lie above cut_out_kpa = { $off } (less vacuum), or the pump chatters
data-wrong-part = part: a { $kind } needs { $expected }, found { $found }
data-not-computed = { $path }: on a trial of an hour this car cannot be computed any further than { $s } s; look at { $part } first: a number of it is far from those around it
data-not-computed-at-all = { $path }: on a trial of an hour this car cannot be computed any further than { $s } s; look at its numbers: one is far from those around it
data-serviceable-outside = { $path }: serviceable ({ $low }, { $high }) reaches outside limit ({ $min }, { $max })
data-new-outside = { $path }: the new value { $new } lies outside limit ({ $min }, { $max })
data-no-stated-limit = { $path }: { $param } has no line under `tolerances`; a fault must breach a stated limit
data-severity-inside = { $path } = { $value } is inside the limit of { $param } ({ $min }, { $max }); a fault must breach it
data-severity-order = { $path }: severity_max = { $max } must lie further out than severity_min = { $min }
data-severity-outside = { $path } = { $value }; the catalogue has { $fault } from { $min } to { $max }
data-not-of-unit = { $path }: { $param } is not a number of the repair unit { $unit } (parts: { $parts })
data-too-high = day.altitude_m = { $altitude }: { $car } reaches its cut-out up to { $limit } m

# Places in the room and on the diagram.
data-not-placed = places: { $what } needs one place on the sheet `{ $sheet }`
data-wrong-sheet = { $path }: { $part } has nothing that belongs on the sheet `{ $sheet }`
data-no-earth-points = { $path }.points: { $part } is no car body; its ports follow from its symbol
data-not-in-room = { $list }: { $what } is missing; every one of the car's has one entry
data-lies = { $path }: { $part } is a hose or wire and has no place of its own; put it into `ways`
data-no-way = { $path }: { $name } is no hose, no wire and no joint between two terminals; only these have a way
data-hose-looks = { $path }: a hose is black rubber and ends in clips; leave it out
data-part-has-area = { $path }: a part has its size from the car's file; leave it out
data-no-area = { $path }: { $joint } is a joint and has no number of its own; write its wire's area_mm2

# Tests of a car.
data-test-line = { $path } ({ $text }): { $why }
data-test-no-testing = { $path } ({ $text }): a test sets up, does, reads and undoes; leave out questions, paper, repairs and findings
data-test-idle = { $path } ({ $text }): it is so already when the test comes there, or what it needs is not so
data-test-not-undone = { $path }: a test leaves the car as it was; it needs the line `{ $line }`
data-test-no-reading = { $path }: a test notes something; write `note shown` behind what it reads
data-test-note-elsewhere = { $path }: only `readings` has notes
data-test-nothing-to-note = { $path }: that reading is noted already; read, time, feel or hear something first
data-test-note-knows = { $path } ({ $text }): nobody knows yet what will be read; write `note shown`, or `note shown for` and a line of the record
data-test-dial-off = { $path }: { $instrument } is read while its dial is off; set it first: `meter volt`
