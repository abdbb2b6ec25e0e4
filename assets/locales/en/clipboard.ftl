clipboard-open = Take the clipboard up (key C)
clipboard-fold = Put the clipboard away (key C)
leaf-card = Card
leaf-sheet = Data
leaf-notebook = Notebook
leaf-suspicions = Thoughts
leaf-finding = Finding

card-customer = The customer says
card-quote = “{ $text }”
card-cautions = Cautions
card-defer = The vehicle maker's data, local rules and licensed practice come before anything this program says. It is practice, not service information.
card-read = Read the card through
card-was-read = read at { $time }

sheet-title = Data sheet
sheet-on-desk = The data sheet of the car lies on the desk. Fetched once, it stays on the clipboard.
sheet-read = Fetch it and read it
sheet-was-read = read at { $time }
sheet-altitude = Above { $m } m the pump may not reach its cut-out.
sheet-day = Gauge limits hold for 101.3 kPa on the barometer; on another day those of the pump shrink with the day's pressure.
sheet-cautions = Cautions
sheet-between = in other units: { $min } to { $max }
sheet-least = in other units: at least { $min }
sheet-deeper = in other units: { $max } or deeper
sheet-most = in other units: at most { $max }

notebook-open = Looked at, not noted
notebook-none-open = Nothing waits to be noted.
notebook-open-why = Only what is noted counts. Write down what you read yourself.
notebook-draft = begun: { $text }
notebook-strike-short = Strike
notebook-strike = Strike reading { $n } out
notebook-unstrike-short = Take back
notebook-unstrike = Take back that reading { $n } is struck out
notebook-strike-why = It waits for no note then. The attempt keeps it, and it can be taken back.
notebook-notes = Noted
notebook-no-notes = Nothing noted yet.
notebook-no-number = no number
notebook-reading = { $n } · { $time } · { $what }
notebook-note-number = Note reading { $n } …
notebook-note-sense = Note reading { $n }
notebook-anew = Write reading { $n } anew …
notebook-anew-why = A slip of the pen is struck out; the attempt keeps both.
notebook-struck-out = struck out
notebook-for = for: { $line }

note-held = As you read it at { $time }. Time stands until you write it down or leave it.
note-what = What you read, with its unit
note-hint = such as −58 kPa
note-for = For the record
note-line = Line of the record for reading { $n }
note-no-line = no line
note-do = Write it down
note-no-number = That is no number: write digits, with the sign if there is one.
note-no-unit = A number without its unit tells nothing: pick one, or write it behind the number.

record-title = Record of the car
record-day = The same for every job
record-release = Release checks, after the last change
record-filled = { $line }: filled
record-open = { $line }: open
record-not-met = { $line }: noted, but { $why }

suspicion-prompt = What you suspect, and why. Nobody marks it; it helps to think.
suspicion-do = Write it down

finding-given = Finding { $n }
finding-first = The first finding is locked, and must be given before the first repair: what was noted until then is its evidence. A later one counts half.
finding-second = A finding was given, or something was repaired already: this one counts half.
finding-units = Outside its limits
finding-sound = Everything inside its limits
finding-certainty = How sure
finding-sure = { $percent } sure
finding-fixed = The school fixes this: every finding counts as { $percent } sure.
finding-unknown = Not found: the car stays, refer on
finding-do = Give this finding …
finding-no-certainty = Say how sure you are.
finding-no-unit = Tick what is outside its limits, or that everything is inside.
finding-kept = The ticks are kept; with this they do not count.
finding-said = { $units }. { $percent } % sure.
finding-said-sound = Everything is inside its limits. { $percent } % sure.
finding-said-unknown = Not found; the car stays and is referred on.
finding-confirm = Write this finding down?
finding-confirm-first = It is locked then. What is noted later counts for the release only.
finding-confirm-second = It counts half; the first stays as it is.
finding-confirm-do = Yes, this is my finding
finding-confirm-not = Not yet

hints-heading = What would tell most now?
hints-ask = Ask ({ $points } points off; { $left } left)
hints-counted = Worked out from what you noted; it does not know what is hidden. Each time is counted.
hints-coming = Being worked out. Go on as you like; it is counted when it is there.
hints-stands = This stands until something more is noted.
hints-test = Most for its minutes: { $test }.
hints-enough = Your notes say enough: give the finding.
hints-nothing = No test that can be done here is worth its minutes.

leave-title = Leave the job?
leave-kept = All that was done so far is kept. The job can be carried on from the front desk.
leave-rehearsal = This is a rehearsal: nothing of it is kept.
leave-lost = A note, a thought or a finding that is only half written is not kept.
leave-do = Leave the job now
leave-not = Stay

back-title = Hand the car back?
back-complete = On paper nothing is missing.
back-missing = Still missing on paper:
back-no-finding = No finding is given; without one the car cannot go back.
back-not-noted = { $n ->
    [one] One reading was looked at but not noted.
   *[other] { $n } readings were looked at but not noted.
}
back-record = Open in the record: { $lines }.
back-release = Release checks open: { $lines }.
back-caution = Brakes
back-caution-text = Never release a car before its assist is proven. Look over the car: covers, plugs, clamps, instruments, chocks, extraction. After this the attempt is over.
back-do = Hand it back
back-not = Not yet
