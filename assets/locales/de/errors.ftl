# Was schiefgehen kann: Dateien, Versuche, Ausgaben.

# Dateien. $what ist eine der Angaben unten; $why, was das System sagt.
file-not-read = { $file } kann nicht gelesen werden: { $why }
file-not-written = { $file } kann nicht geschrieben werden: { $why }
file-not-regular = { $file } ist { $what }, keine gewöhnliche Datei; eine Datei nennen
file-too-large = { $file }: { $bytes } Bytes oder mehr; gelesen werden hier höchstens { $most } Bytes ({ $what })
file-not-text = { $file }, Zeile { $line }: kein UTF-8-Text; die Datei als UTF-8 speichern
file-outside = { $file } ist ein Verweis aus { $folder } hinaus; die Datei selbst dorthin legen
file-is = das ist { $what }
file-bytes = { $bytes } Bytes sind zu viele (höchstens { $most })
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
attempt-not-opened = { $file } kann nicht zum Schreiben geöffnet werden: { $why }
attempt-nothing-beside = neben { $file } kann nichts geschrieben werden: { $why }
attempt-not-cut = die abgerissene letzte Zeile von { $file } kann nicht abgeschnitten werden: { $why }
attempt-not-locked = { $file } kann nicht gesperrt werden: { $why }
attempt-not-kept = die beschädigte Datei kann nicht als { $file } aufgehoben werden: { $why }
attempt-changed = während der Bewertung verändert
attempt-many-damaged = { $most } beschädigte Dateien dieses Namens sind schon aufgehoben; einige wegräumen
attempt-in-use = { $file } wird von einem anderen Programm benutzt; zuerst jenes schließen
attempt-is-none = { $file }: { $what }; erwartet wird eine Versuchsdatei, die pinhole geschrieben hat
attempt-out-of-range = { $file }, Zeile { $line }: { $beyond }{ $hint }
attempt-damaged = { $file }, Zeile { $line }: { $what }{ $hint }
attempt-mend-hint = .
    Die Zeilen davor sind ganz; erhalten mit: pinhole mend { $file }
attempt-no-randomness = das System gibt keine Zufallszahlen für einen Startwert ({ $why }); einen angeben mit --seed
attempt-form = diese Handlung lässt sich nicht aufschreiben: { $why }
attempt-stopped = { $file } konnte zuvor nicht geschrieben werden; darin geschieht nichts mehr. Platz schaffen, dann den Versuch fortsetzen

# Die Lehrkraft entscheidet anders als die Bewertung.
override-not-finished = { $file }: das Fahrzeug wurde nicht übergeben, also gibt es keine Bewertung, von der abzuweichen wäre
override-not-marked = in { $file } steht noch keine Bewertung; zuerst bewerten mit: pinhole mark { $file }
override-nothing = angeben, was gelten soll: --total und eine Zahl von 0 bis 100, --competent oder --not-yet
override-total = { $value } ist keine Punktzahl; erwartet wird 0 bis 100
override-no-reason = eine abweichende Entscheidung braucht einen Grund; mit --reason angeben
override-long-reason = ein Grund von { $count } Zeichen; höchstens { $most } werden aufbewahrt
override-no-name = eine abweichende Entscheidung braucht einen Namen oder ein Kürzel; mit --by angeben
override-long-name = ein Name von { $count } Zeichen; höchstens { $most } werden aufbewahrt
override-too-many = in { $file } stehen schon { $most } abweichende Entscheidungen; mehr passen nicht hinein
session-other-job = der Versuch gehört zum Auftrag { $attempt }, nicht zu { $job }
session-over = das Fahrzeug ist übergeben; dieser Versuch ist beendet. Einen neuen beginnen mit --new
session-no-hints = in diesem Paket sagt niemand, was am meisten verraten würde
session-hints-asked = alle Hinweise dieses Pakets sind erbeten ({ $given })
session-hint-repaired = es wurde etwas instand gesetzt; von da an gibt es keine Hinweise
script-line = Zeile { $line } ({ $text }): { $why }
script-refused = Zeile { $line } ({ $text }): abgelehnt ({ $kind })

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
kind-proof-page = eine Seite mit Prüfungen
kind-proofs = eine Datei mit Prüfungen in JSON
kind-plan = ein Musterplan
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
places-no-own = dieses System nennt keinen eigenen Datenordner; einen nennen mit --attempts
places-full = in { $folder } liegen { $most } Versuche zu { $job }; einen anderen Ordner nennen mit --attempts
prefs-no-own = dieses System nennt keinen Ordner für Einstellungen
prefs-not-made = { $folder } kann nicht angelegt werden: { $why }
script-pipe = das Skript { $file } ist eine Pipe, keine Datei; Wörter durch eine Pipe schicken: … | pinhole text AUFTRAG --script -
script-unusable = das Skript ist nicht zu gebrauchen: { $why }
kept-competent = { $total }, bestanden
kept-not-yet = { $total }, noch nicht bestanden
kept-altered = diese Programmversion bewertet jedes Mal gleich, also wurde die Datei verändert
kept-other-version = bewertet wurde mit Version { $then } nach { $before }, dies ist Version { $version } nach { $scheme }
kept-differs = In der Datei steht eine andere Bewertung ({ $found }; jetzt { $now }): { $why }. Die Bewertung in der Datei blieb, wie sie ist.
kept-not = Die Bewertung wurde nicht in die Datei des Versuchs geschrieben: { $why }.
marker-stopped = die Bewertung brach mittendrin ab, ein Fehler dieses Programms; bitte mit der Datei melden

# Sprachen.
lang-no-folder = die Sprachen in { $folder } können nicht gelesen werden
lang-not-read = die Sprache { $tag } in { $folder } kann nicht gelesen werden
lang-no-tag = { $tag } ist kein Sprachkürzel wie en oder de-AT
lang-control = { $file }, Zeile { $line }: das Steuerzeichen { $found } darf in Wörtern nicht stehen
lang-not-words = { $file }, Zeile { $lines }: nicht geschrieben, wie Wörter es sind; erwartet wird Schlüssel = Text
lang-twice = { $file }: { $key } hat schon einen Text, hier oder in einer anderen Datei
lang-some-twice = { $file }: ein Schlüssel hat schon einen Text, hier oder in einer anderen Datei
lang-unknown = --lang { $tag }: diese Sprache gibt es nicht; es gibt { $known }

# Bilder eines Laufs, Grafiken einer Bewertung.
curves-nothing = es gibt nichts zu zeichnen: keine Kurve hat einen Punkt
curves-too-many = { $count } Kurven in { $unit }: höchstens { $most } einer Einheit passen in ein Bild
chart-not-drawn = die Grafik konnte nicht gezeichnet werden: { $why }
plot-kpa = kPa absolut
plot-flow = g/s hinaus
plot-current = A hinein
plot-v = V
plot-c = °C
plot-n = N
plot-mm = mm
plot-no-port = --show { $name }: diesen Anschluss oder diese Spalte hat das Fahrzeug nicht; { $part } hat { $known }
plot-no-part = --show { $name }: diesen Anschluss oder diese Spalte hat das Fahrzeug nicht; seine Teile sind { $known }
plot-too-many = --show: { $count } Kurven in { $unit }; höchstens { $most } einer Einheit passen in ein Bild
plot-ending = --plot { $file }: ein Bild endet auf .svg oder .png
plot-letters = die Schrift für Bilder: { $why }; ist der Datenordner vollständig?
plot-no-points = das Bild kann nicht in Punkte umgesetzt werden: { $why }
plot-size = das Bild kann nicht in Punkte umgesetzt werden: { $width } x { $height } Punkte sind keine oder zu viele

# Das Fenster, und Bilder davon.
screen-trouble = die Standardausgabe kann nicht geschrieben werden: { $why }. Was zu tun war, ist getan, aber nicht alles davon wurde gezeigt
shop-marking-stopped = die Bewertung brach ab; die Datei bewerten mit: pinhole mark
shop-hint-stopped = die Berechnung des Hinweises brach ab; gezählt wurde nichts
shop-not-carried-on = { $file } kann nicht fortgesetzt werden
shop-line = Zeile { $n }: { $why }
shop-no-job = kein Auftrag ist offen
window-words = die Wörter des Fensters
window-no-attempt = { $file }: einen solchen Versuch zum Fortsetzen gibt es nicht
window-display-unset = es gibt keinen Bildschirm (DISPLAY ist nicht gesetzt)
window-no-display = es gibt keinen Bildschirm ({ $why })
window-no-adapter = es gibt keine Grafikkarte, die zeichnen kann: kein Treiber funktioniert; unter Debian enthält das Paket mesa-vulkan-drivers einen in Software
shot-no-language = die Sprache { $tag } gibt es nicht; es gibt { $known }
shot-stopped = { $file }: die Darstellung blieb stehen
shot-no-shaders = { $n } der Shader kann diese Grafikkarte nicht erzeugen
shot-no-frame = nach { $s } s ist das Bild nicht vollständig: es wurde keines gezeichnet
shot-not-whole = nach { $s } s ist das Bild nicht vollständig: { $shaders } Shader und { $rest } Formen oder Bilder fehlen

# Ein Grund hinter einem Fehler.
error-because = { $what }: { $why }
error-as-it-is = { $text }

# Was an einem geprüften Auftrag nicht stimmt.
prove-no-folder = der Ordner { $folder } für die Ergebnisse der Prüfung lässt sich nicht anlegen: { $why }; nennen Sie einen anderen mit --results
prove-no-plans = der Ordner { $folder } für Musterpläne lässt sich nicht anlegen: { $why }
prove-no-tests = das Fahrzeug hat keine Liste von Prüfungen, also lässt sich nichts planen: schreiben Sie assets/tests/{ $car }.ron
prove-inside-limits = der Fehler { $fault } ist versteckt, aber alles liegt innerhalb der Grenzwerte: machen Sie ihn schwerer, oder verstecken Sie nichts
prove-symptom = nur { $n } % solcher Fahrzeuge werden so beanstandet: ändern Sie die Zahlen der Beanstandung oder die Schwere
prove-not-solvable = mit den vorhandenen Werkzeugen wird der Fehler nur an { $n } % solcher Fahrzeuge gefunden: geben Sie mehr Werkzeug, oder machen Sie ihn schwerer
prove-too-long = der Musterplan braucht { $takes } Minuten Arbeit, der Auftrag gibt { $gives }: geben Sie mehr Zeit
prove-card = die Karte allein macht den Fehler zu { $n } % wahrscheinlich: er lässt sich ohne eine Messung raten
prove-confirming = wer nur selbst nachsieht, was der Kunde sagte ({ $tests }), hat { $n } % des Nachweises: geben Sie dem Fahrzeug einen Fehler, der ebenso beanstandet wird, oder ändern Sie die Beanstandung
prove-unsafe = die Prüfung { $test } ist an diesem Fahrzeug gefährlich ({ $rule }): ändern Sie die Prüfung, oder wie das Fahrzeug kommt
prove-no-spare = { $unit } liegt außerhalb der Grenzwerte, und es gibt weder ein Ersatzteil noch einen Weg der Instandsetzung: ergänzen Sie eines in assets/spares
prove-alike = keine vorhandene Prüfung trennt den Fehler von mehr als einer anderen Einheit ({ $units }): geben Sie mehr Werkzeug, oder machen Sie ihn schwerer
prove-no-script = es gibt keinen Musterversuch: schreiben Sie das Skript, das der Auftrag in reference/ nennt
prove-script-stops = der Musterversuch bleibt stehen: { $why }
prove-script-weak = der Musterversuch selbst ist nur an { $n } von { $all } Fahrzeugen kompetent
prove-script-claims = der Musterversuch nennt sich zu { $claims } % sicher, und seine Ablesungen machen das Richtige zu { $n } % wahrscheinlich
