window-title = pinhole
language-name = English
decimal-mark = .

station-desk = Desk
station-cab = Driver's seat
station-bay = Bonnet
station-front = Front, low
station-bench = Bench
middle-room = Room
middle-diagram = Line diagram
middle-both = Both
bar-menu = Menu ▾
bar-station = Place: { $station }
bar-leave = Leave the job
bar-settings = Settings
bar-mark-sheet = Mark sheet
bar-hand-back = Hand the car back …
room-preparing = Preparing the room …
room-lacking = This graphics card cannot make { $n ->
    [one] one of the room's shaders
   *[other] { $n } of the room's shaders
 }: something may be missing in it. The line diagram (L) shows everything.
room-by-diagram = No room is written for this car; what has no place lies on a board, in the order of the line diagram.
room-in-a-row = No room is written for this car; what has no place lies on a board, in the order of the car's file.
room-broken = The file of this car's room cannot be used, so what has no place of its own is laid out on a board. { $why }

over-look = The car is handed back. Look at it as it was left: nothing can be done to it any more.
over-back = Back to the mark sheet
menu-over = The car is handed back: this can be looked at, and nothing more.

pad-mark = decimal point
pad-sign = sign, plus or minus
pad-back = take the last one back

name-joint = joint: { $a } – { $b }
name-port = { $part }: { $end }
name-key = ignition key
name-starter = starter and accelerator
name-pedal = brake pedal
name-chocks = wheel chocks
name-extraction = exhaust extraction
name-job-card = job card
name-data-sheet = data sheet
name-car = the whole car
name-clock = the clock

