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
bar-leave = Leave the job
bar-settings = Settings
bar-mark-sheet = Mark sheet
bar-hand-back = Hand the car back …
room-preparing = Preparing the room …
room-lacking = This graphics card cannot make { $n ->
    [one] one of the room's shaders
   *[other] { $n } of the room's shaders
 }: something may be missing in it. The line diagram (L) shows everything.

name-joint = joint: { $a } – { $b }
name-port = { $part }: { $end }
name-key = ignition key
name-starter = starter and accelerator
name-pedal = brake pedal
name-chocks = wheel chocks
name-job-card = job card
name-data-sheet = data sheet
name-car = the whole car
name-clock = the clock

