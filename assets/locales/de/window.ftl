window-title = pinhole
language-name = Deutsch
decimal-mark = ,

station-desk = Schreibtisch
station-cab = Fahrersitz
station-bay = Motorraum
station-front = Fahrzeugfront
station-bench = Werkbank
middle-room = Werkstatt
middle-diagram = Schaltplan
middle-both = Beides
bar-leave = Auftrag verlassen
bar-settings = Einstellungen
bar-mark-sheet = Bewertung
bar-hand-back = Fahrzeug übergeben …
room-preparing = Der Raum wird vorbereitet …
room-lacking = Diese Grafikkarte kann { $n ->
    [one] einen Shader
   *[other] { $n } Shader
 } des Raums nicht anlegen: Darin kann etwas fehlen. Der Leitungsplan (L) zeigt alles.

name-joint = Verbindung: { $a } – { $b }
name-port = { $part }: { $end }
name-key = Zündschlüssel
name-starter = Anlasser und Fahrpedal
name-pedal = Bremspedal
name-chocks = Unterlegkeile
name-job-card = Auftragskarte
name-data-sheet = Datenblatt
name-car = Ganzes Fahrzeug
name-clock = Uhr

