# Time control.

clock-name = workshop clock { $time }
clock-spent = { $worked } min worked · { $waited } min waited
clock-held = Time stands: reading { $n } is held
pace-hold = Paused
pace-live = ×1
pace-ten = ×10
pace-sixty = ×60
pace-name = Time: { $pace }
tip-pace = How fast time runs ({ $key })
time-menu = Time ▾
time-wait = Wait …
time-until = Until …
time-watch = Stopwatch …
time-overnight = Overnight …
time-help = Keys and first steps
tip-wait = Wait a stated time (W)
tip-until = Wait until the pump or a lamp does something (U)
tip-watch = Time the pump's run or rest (S)
tip-overnight = Twelve hours, the car stands (O)
tip-help = All keys, and how to begin (F1)
