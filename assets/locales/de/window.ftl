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
bar-menu = Menü ▾
bar-station = Ort: { $station }
bar-leave = Auftrag verlassen
bar-settings = Einstellungen
bar-mark-sheet = Bewertung
bar-hand-back = Fahrzeug übergeben …
room-preparing = Der Raum wird vorbereitet …
room-lacking = Diese Grafikkarte kann { $n ->
    [one] einen Shader
   *[other] { $n } Shader
 } des Raums nicht anlegen: Darin kann etwas fehlen. Der Leitungsplan (L) zeigt alles.
room-by-diagram = Für dieses Fahrzeug ist kein Raum geschrieben; was keinen Platz hat, liegt auf einem Brett, wie im Leitungsplan.
room-in-a-row = Für dieses Fahrzeug ist kein Raum geschrieben; was keinen Platz hat, liegt auf einem Brett, wie in der Fahrzeugdatei.
room-broken = Die Datei zum Raum dieses Autos ist nicht brauchbar; was keinen eigenen Platz hat, liegt darum auf einem Brett. { $why }

over-look = Das Fahrzeug ist übergeben. Man kann es ansehen, wie es zurückgelassen wurde; zu tun ist daran nichts mehr.
over-back = Zurück zur Bewertung
menu-over = Das Fahrzeug ist übergeben: hier ist nur noch zu sehen, nichts mehr zu tun.

pad-mark = Komma
pad-sign = Vorzeichen, plus oder minus
pad-back = letztes Zeichen löschen

name-joint = Verbindung: { $a } – { $b }
name-port = { $part }: { $end }
name-key = Zündschlüssel
name-starter = Anlasser und Fahrpedal
name-pedal = Bremspedal
name-chocks = Unterlegkeile
name-extraction = Abgasabsaugung
name-job-card = Auftragskarte
name-data-sheet = Datenblatt
name-car = Fahrzeug
name-clock = Uhr

