# Was an einer Datendatei falsch sein kann (Fahrzeuge, Messgeräte, Ersatzteile, Schaltpläne, Räume, Pakete, Aufträge).
# Schlüssel und Wörter der Dateien sind in jeder Sprache dieselben.

# Wo: $what ist einer der Sätze unten.
data-fault = { $file }: { $what }
data-fault-at = { $file }:{ $line }:{ $column }: { $what }
data-lines =
    { $all }
    { $next }
data-more = und { $more } weitere
data-more-in-file = und { $more } weitere; zuerst diese beheben
data-all-well = nichts ist falsch
data-file-names = Dateinamen
data-all-low = tolerances, alle serviceable am unteren Ende
data-all-high = tolerances, alle serviceable am oberen Ende
data-sum-of-weights = weights (Summe ohne economy)

# Dateien und Ordner, die nicht gelesen werden.
data-not-read = kann nicht gelesen werden ({ $why })
data-not-regular = ist { $what }, keine gewöhnliche Datei
data-leaves-folder = ist ein Verweis aus dem Datenordner hinaus; die Datei selbst dorthin legen
data-not-a-name = der Name dieser Datei ist kein einfacher Text; sie umbenennen mit a bis z, 0 bis 9 und `-` oder `_`
data-too-large = { $bytes } Bytes; gelesen werden höchstens { $max } Bytes
data-not-text = Zeile { $line }, Byte { $at } ist kein UTF-8; die Datei als UTF-8-Text speichern
data-too-many-files = { $count } Dateien in diesem Ordner; höchstens { $max } dürfen dort liegen
data-too-many-packs = { $count } Pakete in diesem Ordner; höchstens { $max } dürfen dort liegen

# Nicht geschrieben, wie solche Dateien es sind.
data-words-stations = den Arbeitsplätzen
data-words-parts = den Arten von Teilen
data-words-record = den Arten von Protokollzeilen
data-words-tests = den Arten von Prüfungen
data-words-displays = den Anzeigen
data-words-symptoms = den Beanstandungen
data-words-sheets = den Blättern
data-words-sides = den Seiten
data-words-bodies = den Karosserien
data-words-colours = den Farben einer Leitung
data-words-ends = den Enden einer Leitung
data-words-covers = den Formen einer Abdeckung
data-words-fixtures = den Einbauten
data-words-other = den Wörtern, die hier stehen dürfen
data-this-block = dieser Block
data-syntax-near = { $expected }; bei `{ $near }`
data-truncated = die Datei endet mitten in einem Wert; wurde sie abgeschnitten?
data-unknown-key = `{ $inside }` hat keinen Schlüssel `{ $key }`; bekannte Schlüssel: { $known }
data-missing-key = `{ $inside }` braucht den Schlüssel `{ $key }`
data-key-twice = der Schlüssel `{ $key }` von `{ $inside }` steht zweimal da
data-unknown-word = `{ $word }` gehört nicht zu { $of }: { $known }
data-other-block = erwartet wird der Block `{ $block }( … )`, gefunden `{ $found }`
data-expected-list = erwartet wird eine Liste, [ … ]
data-expected-end-of-list = erwartet wird ein Komma oder das ] am Ende der Liste
data-expected-bool = erwartet wird true oder false
data-expected-comma = erwartet wird ein Komma
data-expected-number = erwartet wird eine Zahl
data-expected-whole = erwartet wird eine ganze Zahl
data-expected-size = erwartet wird eine ganze Zahl von 0 bis 4294967295
data-expected-key-value = erwartet wird Schlüssel: Wert
data-expected-block = erwartet wird ein Block, ( … )
data-expected-end-of-block = erwartet wird ein Komma oder das ) am Ende des Blocks
data-expected-text = erwartet wird ein Text in Anführungszeichen
data-expected-word = erwartet wird ein Schlüssel oder ein Wort
data-no-such-escape = dieses Zeichen hinter einem \ gibt es in einem Text nicht; ein \ selbst steht doppelt da
data-open-remark = eine Anmerkung /* hat kein Ende */
data-expected-end = erwartet wird das Ende der Datei
data-too-deep = zu viele Blöcke stehen ineinander
data-length = { $found } Werte sind hier zu wenige oder zu viele
data-no-ron = das ist nicht als RON geschrieben
data-expected-named = erwartet wird der Block `{ $block }( … )`
data-expected-in-range = erwartet wird eine ganze Zahl im zulässigen Bereich
data-expected-keys = erwartet wird ein Block von Schlüsseln mit Werten
data-expected-values = erwartet werden Werte in Klammern, (1, 2)
data-expected-listed = erwartet wird eines der Wörter, die hier stehen dürfen
data-expected-other = erwartet wird ein anderer Wert

# Werte. $range ist ein Bereich, $expected, was dastehen soll.
data-wrong-schema = schema: { $found }; dieses Programm liest schema { $expected }
data-out-of-range = { $path } = { $value }, zulässig { $range }
data-not-finite = { $path } = { $value } ist keine endliche Zahl, zulässig { $range }
data-range-reversed = { $path } = ({ $low }, { $high }): das untere Ende muss zuerst stehen
data-too-many = { $path }: { $count } Einträge unter { $what }; höchstens { $max } dürfen dort stehen
data-too-long = { $path }: { $count } Zeichen; höchstens { $max } dürfen dort stehen
data-control = { $path }: Zeichen { $place } ist { $found }, ein Steuerzeichen, das in keinem Text stehen darf
data-control-one-line = { $path }: Zeichen { $place } ist { $found }, ein Steuerzeichen, das in keinem Text stehen darf (gemeint ist eine Zeile)
data-empty = { $path } ist leer; { $expected }
data-wrong-unit = { $path } = { $unit } ist keine Einheit; bekannt: { $known }
data-no-bound = { $path } hat weder `min` noch `max`; ein Grenzwert braucht mindestens eines
data-no-step = { $path } = { $value } ist keine Stufe der Sicherheit; 0.40, 0.60, 0.80 oder 0.95 hinschreiben
data-no-direction = { $path } = (0, 0, 0) zeigt nirgendwohin; eine Richtung hinschreiben, zum Beispiel (0, 1, 0) für nach oben
data-range = { $min } bis { $max }
data-range-unit = { $min } bis { $max } { $unit }
data-unit-money = Werkstattgeld
data-unit-weight = (relatives Gewicht)
data-unit-metre = m
data-unit-degree = Grad
data-unit-of-hundred = von 100
data-unit-grid-step = Rasterschritte
data-unit-quarter-turn = Vierteldrehungen
data-unit-of-span = % der Skala
data-unit-of-reading = % vom Messwert
data-unit-count = Einheiten der letzten Stelle
data-unit-instrument = in der Einheit des Messgeräts
data-want-car-name = den Namen des Fahrzeugs in Worten hinschreiben
data-want-part-name = den Namen des Teils in Worten hinschreiben
data-want-part-label = den Namen des Teils in ein, zwei Worten hinschreiben
data-want-cover-name = den Namen der Abdeckung in Worten hinschreiben
data-want-unit-name = den Namen der Baugruppe in Worten hinschreiben
data-want-fault-name = den Namen des Fehlers in Worten hinschreiben
data-want-spare-name = den Namen des Ersatzteils in Worten hinschreiben
data-want-tests = zu einer Datei mit Prüfungen gehört mindestens eine
data-want-test-name = den Namen der Prüfung in Worten hinschreiben
data-want-instrument-name = den Namen des Messgeräts in Worten hinschreiben
data-want-instrument-help = in einem Satz sagen, wozu es dient und was es nicht kann
data-want-parts = ein Fahrzeug hat Teile
data-want-unit-parts = eine Baugruppe hat mindestens ein Teil
data-want-cautions = ein Datenblatt hat Warnhinweise
data-want-caution = den Warnhinweis als Satz hinschreiben
data-want-limit = sagen, was wie gemessen wird
data-want-record = sagen, was unter welcher Bedingung protokolliert wird
data-want-title = einen Titel hinschreiben
data-want-author = sagen, wer es verfasst hat
data-want-licence = die Lizenz der Texte angeben
data-want-language = die Sprache als Kürzel angeben: en
data-want-jobs = ein Paket hat mindestens einen Auftrag
data-want-framework = das Rahmenwerk nennen
data-want-edition = seine Ausgabe angeben
data-want-code = den Code darin angeben
data-want-complaint = hinschreiben, was der Kunde gesagt hat
data-want-hazards = die Warnhinweise dieses Auftrags hinschreiben
data-want-debrief = hinschreiben, was nach der Übergabe gesagt wird
data-want-job = den Auftrag als Paket/Auftrag hinschreiben
data-want-line = eine Zeile mit Wörtern hinschreiben, wie an der Eingabe

# Namen.
data-no-part = es gibt kein Teil namens { $name }
data-no-port = es gibt keinen Anschluss namens { $name }
data-no-param = es gibt keine Zahl namens { $name }
data-no-joint = es gibt keine Verbindung namens { $name }
data-no-cover = es gibt keine Abdeckung namens { $name }
data-no-line = es gibt keinen Schlauch, keine Leitung und keine Verbindung namens { $name }
data-no-unit = es gibt keine Baugruppe namens { $name }
data-no-fault = es gibt keinen Fehler namens { $name }
data-no-limit = es gibt keinen Grenzwert namens { $name }
data-no-record = es gibt keine Protokollzeile namens { $name }
data-no-instrument = es gibt kein Messgerät namens { $name }
data-no-spare = es gibt kein Ersatzteil namens { $name }
data-no-test = es gibt keine Prüfung namens { $name }
data-no-car = es gibt kein Fahrzeug namens { $name }
data-no-pack = es gibt kein Paket namens { $name }
data-no-job = es gibt keinen Auftrag namens { $name }
data-twice-part = das Teil { $name } gibt es schon
data-twice-port = den Anschluss { $name } gibt es schon
data-twice-param = die Zahl { $name } gibt es schon
data-twice-joint = die Verbindung { $name } gibt es schon
data-twice-cover = die Abdeckung { $name } gibt es schon
data-twice-line = den Schlauch, die Leitung oder die Verbindung { $name } gibt es schon
data-twice-unit = die Baugruppe { $name } gibt es schon
data-twice-fault = den Fehler { $name } gibt es schon
data-twice-limit = den Grenzwert { $name } gibt es schon
data-twice-record = die Protokollzeile { $name } gibt es schon
data-twice-instrument = das Messgerät { $name } gibt es schon
data-twice-spare = das Ersatzteil { $name } gibt es schon
data-twice-test = die Prüfung { $name } gibt es schon
data-twice-car = das Fahrzeug { $name } gibt es schon
data-twice-pack = das Paket { $name } gibt es schon
data-twice-job = den Auftrag { $name } gibt es schon
data-unknown-name = { $path }: { $none }; bekannt: { $known }
data-name-twice = { $path }: { $there }, bei { $first }
data-bad-name = { $path } = { $name } ist kein Kurzname: a bis z, 0 bis 9 und `{ $joiner }`, mit einem Buchstaben beginnend, höchstens 60 Zeichen
data-bad-script = reference (ein Name, der auf .script endet) = { $name } ist kein Kurzname: a bis z, 0 bis 9 und `-`, mit einem Buchstaben beginnend, höchstens 60 Zeichen
data-not-the-file = id = { $id }, aber zum Namen der Datei gehört { $expected }

# Fahrzeuge, ihr Fehlerkatalog, was ein Auftrag verbirgt.
data-carries-air = Luft
data-carries-current = Strom
data-no-part-at-all = nichts
data-too-many-states = die Teile haben { $count } Zustandsgrößen; berechnet werden höchstens { $max }: weglassen, was kein Auftrag braucht
data-too-many-terminals = die Teile haben { $count } elektrische Anschlüsse; berechnet werden höchstens { $max }: weglassen, was kein Auftrag braucht
data-mixed-joint = { $path } verbindet { $a } ({ $of_a }) mit { $b } ({ $of_b }); beide müssen dasselbe führen
data-joined-to-itself = { $path } verbindet { $port } mit sich selbst
data-port-taken = { $path }: der Luftanschluss { $port } ist schon verbunden, durch { $first }; Luft mit einem Tee verzweigen
data-switch-reversed = { $path }: cut_in_kpa = { $on } muss über cut_out_kpa = { $off } liegen (weniger Unterdruck), sonst taktet die Pumpe
data-wrong-part = part: zu { $kind } gehört { $expected }, da steht { $found }
data-not-computed = { $path }: in einem Probelauf von einer Stunde lässt sich dieses Fahrzeug nur bis { $s } s berechnen; zuerst { $part } ansehen: eine Zahl darin passt nicht zu denen ringsum
data-not-computed-at-all = { $path }: in einem Probelauf von einer Stunde lässt sich dieses Fahrzeug nur bis { $s } s berechnen; seine Zahlen ansehen: eine passt nicht zu denen ringsum
data-serviceable-outside = { $path }: serviceable ({ $low }, { $high }) reicht über limit ({ $min }, { $max }) hinaus
data-new-outside = { $path }: der Neuwert { $new } liegt außerhalb von limit ({ $min }, { $max })
data-no-stated-limit = { $path }: { $param } hat keine Zeile unter `tolerances`; ein Fehler muss einen genannten Grenzwert verletzen
data-severity-inside = { $path } = { $value } liegt innerhalb des Grenzwerts von { $param } ({ $min }, { $max }); ein Fehler muss ihn verletzen
data-severity-order = { $path }: severity_max = { $max } muss weiter außen liegen als severity_min = { $min }
data-severity-outside = { $path } = { $value }; im Fehlerkatalog steht { $fault } von { $min } bis { $max }
data-not-of-unit = { $path }: { $param } ist keine Zahl der Baugruppe { $unit } (Teile: { $parts })
data-too-high = day.altitude_m = { $altitude }: { $car } erreicht die Abschaltschwelle nur bis { $limit } m

# Plätze im Raum und auf dem Schaltplan.
data-not-placed = places: { $what } braucht einen Platz auf dem Blatt `{ $sheet }`
data-wrong-sheet = { $path }: { $part } hat nichts, was auf das Blatt `{ $sheet }` gehört
data-no-earth-points = { $path }.points: { $part } ist keine Karosserie; seine Anschlüsse ergeben sich aus dem Symbol
data-not-in-room = { $list }: { $what } fehlt; alles, was zum Fahrzeug gehört, hat einen Eintrag
data-lies = { $path }: { $part } ist ein Schlauch oder eine Leitung und hat keinen eigenen Platz; gehört unter `ways`
data-no-way = { $path }: { $name } ist kein Schlauch, keine Leitung und keine Verbindung zweier Klemmen; nur diese haben einen Weg
data-hose-looks = { $path }: ein Schlauch ist aus schwarzem Gummi und endet in Schellen; weglassen
data-part-has-area = { $path }: die Maße eines Teils stehen in der Datei des Fahrzeugs; weglassen
data-no-area = { $path }: { $joint } ist eine Verbindung und hat keine eigene Zahl; area_mm2 ihrer Leitung hinschreiben

# Prüfungen eines Fahrzeugs.
data-test-line = { $path } ({ $text }): { $why }
data-test-no-testing = { $path } ({ $text }): eine Prüfung bereitet vor, tut etwas, liest ab und stellt zurück; Fragen, Papiere, Reparaturen und Befunde weglassen
data-test-idle = { $path } ({ $text }): das ist an dieser Stelle der Prüfung schon so, oder es fehlt, was dazu nötig ist
data-test-not-undone = { $path }: eine Prüfung lässt das Fahrzeug, wie es war; es fehlt die Zeile `{ $line }`
data-test-no-reading = { $path }: eine Prüfung notiert etwas; hinter das Abgelesene gehört `note shown`
data-test-note-elsewhere = { $path }: Notizen stehen nur unter `readings`
data-test-nothing-to-note = { $path }: diese Ablesung ist schon notiert; zuerst ablesen, stoppen, fühlen oder hören
data-test-note-knows = { $path } ({ $text }): was abgelesen wird, weiß noch niemand; `note shown` schreiben, oder `note shown for` und eine Zeile des Protokolls
data-test-dial-off = { $path }: { $instrument } wird abgelesen, während der Drehschalter auf Aus steht; zuerst einstellen: `meter volt`
