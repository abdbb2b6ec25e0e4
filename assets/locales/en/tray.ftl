# The tray, its instruments, the page of keys, the list of things.

tray-in-use = In use ({ $n })
tray-board = Tool board
tray-wall = Barometer, thermometer
tray-nothing = Nothing is connected. Take a tool from the board (T).
tray-note-short = Note it
tray-note-it = Note the reading
tray-put-away = Put away
tool-used = ✓ { $name }
board-hint = Click a tool to take it in the hand; what it is for stands here.
tip-board = Instruments in use, or the tool board (T)
tip-wall = Barometer and thermometer on the wall (B)
tip-note = Note the newest reading (N)

# Faces, for those who hear the screen. A dial's number is read, not told.
face-dial = { $name }, { $at }: dial { $min } to { $max } { $unit }, a mark every { $division }
face-display = { $name }, { $at }: { $shows }
face-plain = { $name }, { $at }
face-dark = dark
face-given-up = given up
face-button-up = button up
face-button-down = button held down
at-nothing = not connected
at-wall = on the wall
at-hand = at hand
at-end = { $end } at { $place }
needle-on = The needle stands on { $at }.
needle-between = The needle stands half way between { $low } and { $high }.
needle-low-stop = The needle lies against its lower stop.
needle-high-stop = The needle lies against its upper stop.
dial-class-pressure = cl. { $class }
dial-class = cl. { $class }

lamp-level-0 = dark
lamp-level-1 = it glimmers
lamp-level-2 = half bright
lamp-level-3 = bright

meter-off = off
meter-volt = volts
meter-ohm = ohms
meter-ampere = amperes
meter-sign-off = Off
meter-sign-volt = V
meter-sign-ohm = Ω
meter-sign-ampere = A

find-title = Find a part or a tool
find-place = Find a place for what is in the hand
find-hint = Part of its name
find-nothing = Nothing of that name.
kind-part = part
kind-port = port
kind-joint = joint
kind-cover = cover
kind-instrument = tool
kind-spare = spare
kind-paper = paper
kind-other = car and workshop

help-title = Keys and first steps
help-steps = First steps
step-card = Read the job card and the data sheet on the desk.
step-go = Go to a place with 1 to 5, or turn the room with the pointer.
step-do = Click something, or find it with F: its menu says what can be done.
step-tool = Take a tool from the board (T), then click where its end shall go.
step-note = Read an instrument, then note what you have read: only noted readings count.
step-back = Give your finding on the clipboard, put the car right, check it, hand it back.
help-care = This is practice, not service information. On a real car the maker's data, local rules and licensed practice come first.

keys-going = Looking round
keys-station = Desk, driver's seat, bonnet, front, bench
keys-middle = Room, line diagram, both
keys-find = Find a part or a tool by its name
keys-tab = From part to part; Return opens its menu
keys-escape = Close; put back what is in the hand
help-marks = Marks in the room
help-mark-air = fitting of a hose or pipe
help-mark-wire = electrical terminal
help-mark-thing = part, tool or spare
help-mark-tied = a mark that had to move aside is tied to its place
keys-names = Names in the room, shown or not
keys-menu = In a menu
keys-lines = From line to line; Return takes it
keys-choose = Take a line at once
keys-back = One step back
keys-car = Key, engine, pedal
keys-tools = Tools and readings
keys-board = Tool board
keys-wall = Instruments on the wall
keys-read = Read the instrument in use
keys-note = Note the newest reading
keys-log = All that was said
keys-time = Time
keys-hold = Pause time, let it run
keys-pace = Pause, ×1, ×10, ×60
keys-wait = Wait a stated time
keys-until = Wait until something happens
keys-watch = Stopwatch
keys-overnight = Overnight

room-names = Names
tip-names = Names of parts and tools in the room, shown or not (A)
legend-air = air
legend-wire = current
legend-part = part
