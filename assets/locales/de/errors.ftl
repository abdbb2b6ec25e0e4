# Was schiefgehen kann: Dateien, Versuche, Ausgaben.

# Dateien. $what ist eine der Angaben unten; $why, was das System sagt.
file-not-read = { $file } kann nicht gelesen werden: { $why }
file-not-written = { $file } kann nicht geschrieben werden: { $why }
file-not-regular = { $file } ist { $what }, keine gewöhnliche Datei; eine Datei nennen
file-too-large = { $file }: { $bytes } Bytes oder mehr; gelesen werden hier höchstens { $most } Bytes ({ $what })
file-not-text = { $file }, Zeile { $line }: kein UTF-8-Text; die Datei als UTF-8 speichern
file-outside = { $file } ist ein Verweis aus { $folder } hinaus; die Datei selbst dorthin legen
what-folder = ein Ordner
what-pipe = eine Pipe
what-socket = ein Socket
what-device = ein Gerät
what-else = etwas anderes
system-not-found = eine solche Datei oder einen solchen Ordner gibt es nicht
system-no-reading = keine Leseberechtigung; den Besitzer fragen
system-no-writing = keine Schreibberechtigung; einen Ordner wählen, in den geschrieben werden darf
system-full = der Datenträger ist voll; Platz schaffen, dann weitermachen
system-quota = der eigene Anteil am Datenträger ist verbraucht; Platz schaffen
system-limit = die Datei darf nicht weiter wachsen; Platz schaffen oder die Grenze anheben
system-read-only = der Datenträger ist schreibgeschützt; einen anderen Ordner wählen
system-folder = das ist ein Ordner; eine Datei nennen
system-no-folder = wo ein Ordner sein müsste, ist eine Datei
system-name = einen solchen Namen nimmt das System nicht (zu lang?)
system-pipe = niemand liest es mehr

# Versuche.
attempt-not-read = { $file } kann nicht gelesen werden: { $why }
attempt-not-made = { $file } kann nicht angelegt werden: { $why }
attempt-not-written = { $file } kann nicht geschrieben werden: { $why }
attempt-not-done = das ging nicht ({ $doing } { $file }): { $why }
attempt-in-use = { $file } wird von einem anderen Programm benutzt; zuerst jenes schließen
attempt-is-none = { $file }: { $what }; erwartet wird eine Versuchsdatei, die pinhole geschrieben hat
attempt-out-of-range = { $file }, Zeile { $line }: { $what } ist { $value }; { $bound }{ $hint }
attempt-damaged = { $file }, Zeile { $line }: { $what }{ $hint }
attempt-mend-hint = .
    Die Zeilen davor sind ganz; erhalten mit: pinhole mend { $file }
attempt-no-randomness = das System gibt keine Zufallszahlen für einen Startwert ({ $why }); einen angeben mit --seed
attempt-form = diese Handlung lässt sich nicht aufschreiben: { $why }
attempt-stopped = { $file } konnte zuvor nicht geschrieben werden; darin geschieht nichts mehr. Platz schaffen, dann den Versuch fortsetzen
session-other-job = der Versuch gehört zum Auftrag { $attempt }, nicht zu { $job }
session-over = das Fahrzeug ist übergeben; dieser Versuch ist beendet. Einen neuen beginnen mit --new
script-line = Zeile { $line } ({ $text }): { $why }

# Ausgaben.
output-is-input = { $flag } { $file }: diese Datei wird von diesem Befehl gelesen und ginge verloren; eine andere nennen
output-twice = { $flag } { $file }: dorthin geht schon { $other }; eine andere nennen
output-is-attempt = { $flag } { $file }: das ist ein Versuch, den nichts ersetzt; eine andere Datei nennen
output-foreign = { $flag } { $file }: dort ist eine fremde Datei, nicht { $what } von pinhole; sie wegräumen oder eine andere nennen
output-attempt-name = --attempt { $file }: was auf .{ $ending } endet, ist etwas anderes; der Name muss auf .attempt enden
output-no-file = { $flag } { $file }: das ist { $what }, keine Datei; eine Datei nennen
output-broken-link = { $flag } { $file }: das ist ein Verweis auf eine Datei, die es nicht gibt; die Datei selbst nennen
output-not-written = { $flag } { $file } kann nicht geschrieben werden: { $why }
kind-sheet = eine Bewertung
kind-marks = eine JSON-Datei mit Bewertungen
kind-mark-table = eine Tabelle mit Bewertungen
kind-trace-table = eine Tabelle eines Laufs
kind-drawing = eine Zeichnung eines Laufs
kind-picture = ein PNG-Bild
kind-circuit = eine Schaltung in JSON
kind-speed-table = eine Tabelle mit Geschwindigkeiten
kind-tree = ein Baum für Hilfsmittel
kind-settings = eine Datei mit Einstellungen

# Wo etwas ist, und die Bewertung in der Datei.
places-no-data = { $name }: erwartet wird ein Ordner mit assets/ und scenarios/
places-none = die Datendateien wurden nicht gefunden; erwartet wird ein Ordner mit assets/ und scenarios/: ihn nennen mit --data oder { $variable }
places-no-attempts = der Ordner für Versuche { $folder } kann nicht angelegt werden: { $why }; einen anderen nennen mit --attempts
script-pipe = das Skript { $file } ist eine Pipe, keine Datei; Wörter durch eine Pipe schicken: … | pinhole text AUFTRAG --script -
script-unusable = das Skript ist nicht zu gebrauchen: { $why }
kept-competent = { $total }, bestanden
kept-not-yet = { $total }, noch nicht bestanden
kept-altered = diese Programmversion bewertet jedes Mal gleich, also wurde die Datei verändert
kept-other-version = bewertet wurde mit Version { $then } nach { $before }, dies ist Version { $version } nach { $scheme }
kept-differs = In der Datei steht eine andere Bewertung ({ $found }; jetzt { $now }): { $why }. Die Bewertung in der Datei blieb, wie sie ist.
kept-not = Die Bewertung wurde nicht in die Datei des Versuchs geschrieben: { $why }.
marker-stopped = die Bewertung brach mittendrin ab, ein Fehler dieses Programms; bitte mit der Datei melden
