# Zeit.

clock-name = Werkstattuhr { $time }
clock-spent = { $worked } min gearbeitet · { $waited } min gewartet
clock-held = Zeit steht: Ablesung { $n } gehalten
pace-hold = Angehalten
pace-live = ×1
pace-ten = ×10
pace-sixty = ×60
pace-name = Zeit: { $pace }
tip-pace = Wie schnell die Zeit läuft ({ $key })
time-menu = Zeit ▾
time-wait = Warten …
time-until = Warten bis …
time-watch = Stoppuhr …
time-overnight = Über Nacht …
time-help = Tasten und erste Schritte
tip-wait = Bestimmte Zeit warten (W)
tip-until = Warten, bis Pumpe oder Lampe etwas tun (U)
tip-watch = Lauf- oder Ruhezeit der Pumpe stoppen (S)
tip-overnight = Zwölf Stunden, das Fahrzeug steht (O)
tip-help = Alle Tasten und wie man beginnt (F1)
