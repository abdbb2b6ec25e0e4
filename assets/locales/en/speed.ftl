# What `pinhole bench` prints to people; its table for other programs is English in every language.

# The model.
speed-line = the measured cases need a car and a kit in which this can be done: { $line }: { $why }
speed-never-stops = the pump of { $car } has not stopped after { $s } s; the measured cases need one that does
speed-no-deed = it is not something to do
speed-refused = refused ({ $kind })
speed-no-memory = this system does not tell how much memory is in use
speed-driving = driving
speed-pull-down = pull-down
speed-hold = overnight hold
speed-many-cars = { $n } cars driving
speed-hypotheses = hypothesis runs
speed-memory = memory
speed-as-in-use = steps as in use
speed-one-tick = steps of one tick
speed-fine = a hundredth of the error
speed-one-by-one = one after the other
speed-in-lanes = side by side in lanes
speed-in-plain-lanes = side by side in lanes of plain registers
speed-on-all-threads = on all threads
speed-side-by-side = side by side
speed-side-on-one = side by side on one thread
speed-side-on-all = side by side on all threads
speed-with-buffers = a circuit with its buffers
speed-state-alone = its state variables alone
speed-by-processor = simulated s per processor s
speed-by-the-clock = simulated s per s by the clock
speed-runs-by-processor = runs per processor s
speed-runs-by-the-clock = runs per s by the clock
speed-bytes = bytes
speed-head-case = case
speed-head-how = how
speed-head-best = best
speed-head-median = median
speed-head-of = of
speed-head-beside = beside, by the best
speed-threads = { $threads } threads; best and median of { $samples }.
speed-no-release = This is not a release build: its numbers say little.
speed-a-run = A hypothesis run is an attempt of { $minutes } minutes of work in the car of one of { $worlds } hypotheses and draws.

# The window.
frames-not-run = the program cannot run itself
frames-part = part { $part }: { $why }
frames-told = what part { $part } told
frames-not-drawn = nothing was measured: the panels or the room were not drawn
frames-nothing = nothing was measured
frames-no-reference = the job has no reference
frames-picture = window, { $width } x { $height } px, job { $job }, engine running
frames-adapter = adapter: { $adapter } ({ $kind })
frames-software = software
frames-hardware = hardware
frames-not-known = not known
frames-undrawn = processor time of a frame, nothing drawn
frames-drawn = processor time of a frame, drawn
frames-first = first frame after the start
frames-room = the whole room after the start
frames-memory = most memory held, drawn
