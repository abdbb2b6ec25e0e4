desk-title = pinhole
desk-what = A workshop in which to learn how faults are found in the vacuum circuit of power-assisted brakes: measure, note, decide, put right, prove.
desk-leave = Leave the program
desk-trouble = That did not work
desk-caution = Before anything you learn here is used on a car
desk-caution-1 = The vehicle maker's data, local rules and licensed practice come first. This is practice, not service information.
desk-caution-2 = Brakes can hurt people. Work on them only if you are trained for it, or together with somebody who is.
desk-carry-on = Unfinished attempts
desk-carry-on-this = Carry on: { $job }
desk-attempt = attempt { $n }
desk-actions = { $n ->
    [0] nothing done yet
    [one] one action so far
   *[other] { $n } actions so far
}
desk-minutes = { $minutes ->
    [one] one minute of work
   *[other] { $minutes } minutes of work
}
desk-pack-broken = This pack cannot be used
desk-begin = Begin
desk-go-on = Carry on
