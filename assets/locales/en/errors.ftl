# What can go wrong: files, attempts, outputs. The English stands in the sources too; a test holds the two together.

# Files. $what is one of those below; $why is what the system says.
file-not-read = { $file } cannot be read: { $why }
file-not-written = { $file } cannot be written: { $why }
file-not-regular = { $file } is { $what }, not a regular file; name a file
file-too-large = { $file }: { $bytes } bytes or more; at most { $most } bytes are read of { $what }
file-not-text = { $file }, line { $line }: not UTF-8 text; save the file as UTF-8
file-outside = { $file } is a link that leaves { $folder }; put the file itself there
file-is = is { $what }
file-bytes = { $bytes } bytes are too many (at most { $most })
what-folder = a folder
what-pipe = a pipe
what-socket = a socket
what-device = a device
what-else = something else
system-not-found = there is no such file or folder
system-no-reading = no permission to read it; ask whoever owns it
system-no-writing = no permission to write there; choose a folder you may write in
system-full = the disk is full; make room, then go on
system-quota = your share of the disk is used up; make room
system-limit = the file may not grow any more; make room or lift the limit
system-read-only = the disk is read-only; choose another folder
system-folder = that is a folder; name a file
system-no-folder = a file stands where a folder should be
system-name = the system takes no such name (too long?)
system-pipe = nobody reads it any more

# Attempts.
attempt-not-read = cannot read { $file }: { $why }
attempt-not-made = cannot make { $file }: { $why }
attempt-not-written = cannot write { $file }: { $why }
attempt-not-opened = cannot open for writing { $file }: { $why }
attempt-nothing-beside = cannot write beside { $file }: { $why }
attempt-not-cut = cannot cut the torn last line off { $file }: { $why }
attempt-not-locked = cannot lock { $file }: { $why }
attempt-not-kept = cannot keep the damaged file as { $file }: { $why }
attempt-changed = changed while it was being marked
attempt-many-damaged = { $most } damaged files of this name are kept already; move some away
attempt-in-use = { $file } is in use by another program; close that one first
attempt-is-none = { $file }: { $what }; expected an attempt file written by pinhole
attempt-out-of-range = { $file }, line { $line }: { $beyond }{ $hint }
attempt-damaged = { $file }, line { $line }: { $what }{ $hint }
attempt-mend-hint = .
    The lines before it are whole; keep them with: pinhole mend { $file }
attempt-no-randomness = the system gives no random numbers for a seed ({ $why }); give one with --seed
attempt-form = this action cannot be written down: { $why }
attempt-stopped = { $file } could not be written before; nothing more is done in it. Make room, then carry the attempt on

# An instructor overrides a mark.
override-not-finished = { $file }: the car has not been handed back, so there is no mark to override
override-not-marked = { $file } holds no mark yet; mark it first with: pinhole mark { $file }
override-nothing = say what shall hold: --total and a number from 0 to 100, --competent or --not-yet
override-total = { $value } is no total; expected 0 to 100
override-no-reason = an override needs a reason; give it with --reason
override-long-reason = a reason of { $count } characters; at most { $most } are kept
override-no-name = an override needs a name or initials; give them with --by
override-long-name = a name of { $count } characters; at most { $most } are kept
override-too-many = { $file } holds { $most } overrides already; no more fit into it
session-other-job = the attempt is of the job { $attempt }, not of { $job }
session-over = the car has been handed back; this attempt is over. Begin a new one with --new
session-no-hints = in this pack nobody says what would tell most
session-hints-asked = all hints of this pack were asked for ({ $given })
session-hint-repaired = something was repaired; from there on there are no hints
script-line = line { $line } ({ $text }): { $why }
script-refused = line { $line } ({ $text }): refused ({ $kind })

# Outputs.
output-is-input = { $flag } { $file }: that file is read by this command and would be lost; name another
output-twice = { $flag } { $file }: { $other } goes there already; name another
output-is-attempt = { $flag } { $file }: that is an attempt, which nothing replaces; name another file
output-foreign = { $flag } { $file }: a file is there that is not { $what } written by pinhole; move it away, or name another
output-attempt-name = --attempt { $file }: what ends in .{ $ending } is something else; let the name end in .attempt
output-no-file = { $flag } { $file }: that is { $what }, not a file; name a file
output-broken-link = { $flag } { $file }: that is a link to a file that is not there; name the file itself
output-not-written = { $flag } { $file } cannot be written: { $why }
kind-sheet = a mark sheet
kind-marks = a file of marks in JSON
kind-proof-page = a page of proofs
kind-proofs = a file of proofs in JSON
kind-plan = a reference plan
kind-mark-table = a table of marks
kind-trace-table = a table of a trace
kind-drawing = a drawing of a trace
kind-picture = a PNG picture
kind-circuit = a circuit in JSON
kind-speed-table = a table of speeds
kind-tree = an accessible tree
kind-settings = a settings file

# Where things are, and the mark in the file.
places-no-data = { $name }: expected a folder that holds assets/ and scenarios/
places-none = the data files were not found; expected a folder that holds assets/ and scenarios/: name it with --data or { $variable }
places-no-attempts = the folder for attempts { $folder } cannot be made: { $why }; name another with --attempts
places-no-own = this system names no folder for your data; name one with --attempts
places-full = { $folder } holds { $most } attempts at { $job }; name another folder with --attempts
prefs-no-own = this system names no folder for your settings
prefs-not-made = { $folder } cannot be made: { $why }
script-pipe = the script { $file } is a pipe, not a file; to send words through a pipe: … | pinhole text JOB --script -
script-unusable = the script cannot be used: { $why }
kept-competent = { $total }, competent
kept-not-yet = { $total }, not yet competent
kept-altered = this version of the program gives the same mark each time, so the file was altered
kept-other-version = it was marked with version { $then } by { $before }, this is version { $version } by { $scheme }
kept-differs = The file carries another mark ({ $found }; now { $now }): { $why }. The mark in the file was left as it is.
kept-not = The mark was not written into the attempt's file: { $why }.
marker-stopped = the marker stopped in the middle, which is a mistake of this program; report it with the file

# Languages.
lang-no-folder = the languages in { $folder } cannot be read
lang-not-read = the language { $tag } in { $folder } cannot be read
lang-no-tag = { $tag } is no language tag, such as en or de-AT
lang-control = { $file }, line { $line }: the control character { $found } must not stand in words
lang-not-words = { $file }, line { $lines }: not written as words are; expected key = text
lang-twice = { $file }: { $key } has its words already, here or in another file
lang-some-twice = { $file }: a key has its words already, here or in another file
lang-unknown = --lang { $tag }: there is no such language; there are { $known }

# Pictures of a run, and the charts of a mark sheet.
curves-nothing = there is nothing to draw: no curve has a point
curves-too-many = { $count } curves in { $unit }: at most { $most } of one unit fit into a picture
chart-not-drawn = the chart could not be drawn: { $why }
plot-kpa = kPa absolute
plot-flow = g/s out
plot-current = A in
plot-v = V
plot-c = °C
plot-n = N
plot-mm = mm
plot-no-port = --show { $name }: the car has no such port or column; { $part } has { $known }
plot-no-part = --show { $name }: the car has no such port or column; its parts are { $known }
plot-too-many = --show: { $count } curves in { $unit }; at most { $most } of one unit fit into a picture
plot-ending = --plot { $file }: a picture ends in .svg or .png
plot-letters = the letters of pictures: { $why }; is the data folder whole?
plot-no-points = the picture cannot be turned into points: { $why }
plot-size = the picture cannot be turned into points: { $width } x { $height } points are none or too many

# The window, and pictures of it.
screen-trouble = standard output cannot be written: { $why }. What was to be done is done, but not all of it is shown
shop-marking-stopped = the marking stopped; mark the file with: pinhole mark
shop-hint-stopped = the working out of the hint stopped; nothing was counted
shop-not-carried-on = { $file } cannot be carried on
shop-line = line { $n }: { $why }
shop-no-job = no job is open
window-words = the words of the window
window-no-attempt = { $file }: there is no such attempt to carry on
window-display-unset = there is no display (DISPLAY is not set)
window-no-display = there is no display ({ $why })
window-no-adapter = there is no graphics adapter that can draw: no driver was found that works; on Debian the package mesa-vulkan-drivers has a software one
shot-no-language = there is no language { $tag }; there is { $known }
shot-stopped = { $file }: the renderer stopped
shot-no-shaders = this adapter cannot make { $n } of the shaders
shot-no-frame = after { $s } s the picture is not whole: no frame was drawn
shot-not-whole = after { $s } s the picture is not whole: { $shaders } shaders and { $rest } shapes or images are missing

# A cause behind an error.
error-because = { $what }: { $why }
error-as-it-is = { $text }

# What is wrong with a job that is proved.
prove-no-folder = the folder { $folder } for what is proved cannot be made: { $why }; name another with --results
prove-no-plans = the folder { $folder } for reference plans cannot be made: { $why }
prove-no-tests = the car has no list of tests, so nothing can be planned: write assets/tests/{ $car }.ron
prove-inside-limits = the fault { $fault } is hidden, but everything is inside its limits: raise its severity, or hide nothing
prove-symptom = only { $n } % of such cars raise the complaint: change the complaint's numbers or the severity
prove-not-solvable = with the tools that there are the fault is found in only { $n } % of such cars: give more tools, or raise the severity
prove-too-long = the reference plan takes { $takes } minutes of work, the job gives { $gives }: give more time
prove-card = the card alone makes the fault { $n } % probable: it can be guessed without a measurement
prove-confirming = whoever only sees for himself what the customer said ({ $tests }) has { $n } % of the evidence: add a fault to the car that complains alike, or change the complaint
prove-unsafe = the test { $test } is dangerous in this car ({ $rule }): mend the test, or the way the car comes in
prove-no-spare = { $unit } is outside its limits, and there is neither a spare nor a way to mend it: add one to assets/spares
prove-alike = no test there is tells the fault from more than one other unit ({ $units }): give more tools, or raise the severity
prove-no-script = there is no reference attempt: write the script that the job names in reference/
prove-script-stops = the reference attempt stops: { $why }
prove-script-weak = the reference attempt itself is competent in only { $n } of { $all } cars
prove-script-claims = the reference attempt says it is { $claims } % sure, and its readings make the truth { $n } % probable
