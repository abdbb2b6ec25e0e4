# Die Ablage, ihre Geräte, die Tastenseite, die Liste der Dinge.

tray-in-use = In Gebrauch ({ $n })
tray-board = Werkzeugwand
tray-wall = Barometer, Thermometer
tray-nothing = Nichts ist angeschlossen. Ein Werkzeug von der Wand nehmen (T).
tray-note-short = Notieren
tray-note-it = Ablesung notieren
tray-put-away = Weglegen
tool-used = ✓ { $name }
board-hint = Ein Werkzeug anklicken und es liegt in der Hand; hier steht, wozu es dient.
tip-board = Geräte in Gebrauch oder Werkzeugwand (T)
tip-wall = Barometer und Thermometer an der Wand (B)
tip-note = Die neueste Ablesung notieren (N)

# Anzeigen für alle, die den Bildschirm hören. Die Zahl auf einer Skala wird abgelesen, nicht gesagt.
face-dial = { $name }, { $at }: Skala { $min } bis { $max } { $unit }, Teilung { $division }
face-display = { $name }, { $at }: { $shows }
face-plain = { $name }, { $at }
face-dark = dunkel
face-given-up = aufgegeben
face-button-up = Taster oben
face-button-down = Taster gedrückt
at-nothing = nicht angeschlossen
at-wall = an der Wand
at-hand = griffbereit
at-end = { $end } an { $place }
needle-on = Der Zeiger steht auf { $at }.
needle-between = Der Zeiger steht mitten zwischen { $low } und { $high }.
needle-low-stop = Der Zeiger liegt am unteren Anschlag.
needle-high-stop = Der Zeiger liegt am oberen Anschlag.
dial-class-pressure = Kl. { $class }
dial-class = Kl. { $class }

lamp-level-0 = dunkel
lamp-level-1 = sie glimmt
lamp-level-2 = halb hell
lamp-level-3 = hell

meter-off = aus
meter-volt = Volt
meter-ohm = Ohm
meter-ampere = Ampere
meter-sign-off = Aus
meter-sign-volt = V
meter-sign-ohm = Ω
meter-sign-ampere = A

find-title = Teil oder Werkzeug suchen
find-place = Platz suchen für das, was in der Hand ist
find-hint = Teil des Namens
find-nothing = Nichts mit diesem Namen.
kind-part = Teil
kind-port = Anschluss
kind-joint = Verbindung
kind-cover = Abdeckung
kind-instrument = Werkzeug
kind-spare = Ersatzteil
kind-paper = Papier
kind-other = Fahrzeug und Werkstatt

help-title = Tastenbelegung und erste Schritte
help-steps = Erste Schritte
step-card = Auftrag und Datenblatt auf dem Schreibtisch lesen.
step-go = Mit 1 bis 5 an einen Platz gehen oder den Raum mit der Maus drehen.
step-do = Etwas anklicken oder mit F suchen: sein Menü sagt, was sich damit tun lässt.
step-tool = Ein Werkzeug von der Wand nehmen (T), dann anklicken, wohin sein Ende soll.
step-note = Ein Gerät ablesen und das Abgelesene notieren: nur Notiertes zählt.
step-back = Den Befund auf dem Klemmbrett geben, instand setzen, prüfen, übergeben.
help-care = Dies ist eine Übung, keine Serviceunterlage. Am echten Fahrzeug gehen Herstellerdaten, örtliche Vorschriften und zugelassene Praxis vor.

keys-going = Sich umsehen
keys-station = Schreibtisch, Fahrersitz, Motorraum, Fahrzeugfront, Werkbank
keys-middle = Werkstatt, Schaltplan, beides
keys-find = Teil oder Werkzeug nach Namen suchen
keys-tab = Von Teil zu Teil; Eingabetaste öffnet das Menü
keys-escape = Schließen; zurücklegen, was in der Hand ist
help-marks = Zeichen in der Werkstatt
help-mark-air = Anschluss einer Unterdruckleitung
help-mark-wire = elektrische Klemme
help-mark-thing = Teil, Werkzeug oder Ersatzteil
help-mark-tied = ein Zeichen, das ausweichen musste, hängt an einer Linie
keys-names = Namen in der Werkstatt zeigen oder nicht
keys-menu = Im Menü
keys-lines = Von Zeile zu Zeile; Eingabetaste wählt aus
keys-choose = Zeile sofort auswählen
keys-back = Einen Schritt zurück
keys-car = Zündschlüssel, Motor, Pedal
keys-tools = Werkzeug und Ablesungen
keys-board = Werkzeugwand
keys-wall = Geräte an der Wand
keys-read = Das Gerät in Gebrauch ablesen
keys-note = Die neueste Ablesung notieren
keys-log = Meldungsverlauf
keys-time = Zeit
keys-hold = Zeit anhalten, laufen lassen
keys-pace = Pause, ×1, ×10, ×60
keys-wait = Bestimmte Zeit warten
keys-until = Warten, bis etwas geschieht
keys-watch = Stoppuhr
keys-overnight = Über Nacht

room-names = Namen
tip-names = Namen von Teilen und Werkzeugen in der Werkstatt zeigen oder nicht (A)
legend-air = Luft
legend-wire = Strom
legend-part = Teil
