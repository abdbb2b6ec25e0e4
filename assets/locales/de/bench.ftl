# Die Textwerkstatt: was sie rund um das sagt, was die Werkstatt meldet. Wörter, die man tippt (fit, note, wait until pump
# stops), und Kurznamen (hose_m, tee.2) sind in jeder Sprache dieselben; hier stehen sie so, wie man sie tippt.

bench-and = und
bench-example = Beispiel:

bench-attempt = Versuch: { $file }
bench-hint = help zeigt die Wörter, car das Fahrzeug, tools die Werkzeuge.
bench-not-handed-back = Das Fahrzeug ist noch nicht übergeben. Weiter geht es mit:
bench-unfinished = (In { $file } liegt ein nicht abgeschlossener Versuch; fortsetzen mit --resume.)
bench-ask-carry-on = { $file } fortsetzen?
bench-ask-unfinished = Es gibt einen nicht abgeschlossenen Versuch, { $file }. Fortsetzen?
bench-ask-mend = Reparieren und ab der letzten ganzen Handlung weitermachen?
bench-ask-hand-back = Das Fahrzeug jetzt übergeben?
bench-yes-no = [J/n]
bench-yes = j
bench-yes-long = ja
bench-no = n
bench-no-long = nein
bench-yes-or-no = j für ja oder n für nein eingeben. [J/n]
bench-torn = Die letzte Zeile des Versuchs wurde abgerissen, als das Programm endete; diese Handlung ist verloren.
bench-carried-on = { $n ->
    [one] Fortgesetzt nach einer Handlung.
   *[other] Fortgesetzt nach { $n } Handlungen.
}
bench-jobs = Aufträge:
bench-which-job = Welcher? [1]
bench-number-of-job = Eine Zahl von 1 bis { $n } eingeben.
bench-note-shown = Schreiben Sie auf, was Sie selbst abgelesen haben; note shown ist für Skripte.
bench-given-up = (Auch ein Aufgeben ist eine Ablesung: note hält sie fest, wie sie ist.)
bench-first-number = (Nur was notiert ist, zählt. Schreiben Sie auf, was Sie abgelesen haben, mit Einheit: note … { $unit })
bench-first-sense = (Nur was notiert ist, zählt: note hält es fest.)
bench-beyond = Nicht ausgeführt: { $why }.
bench-no-finding = Es ist noch kein Befund abgegeben (help finding).
bench-mark-later = Die Bewertung kommt nach der Übergabe (hand back).
bench-next-working = Wird berechnet, was am meisten verraten würde …
bench-next-test = Am meisten für ihre Minuten verrät: { $test }.
bench-next-enough = Ihre Notizen sagen genug: geben Sie den Befund ab.
bench-next-nothing = Keine Prüfung, die hier möglich ist, lohnt ihre Minuten.
bench-next-counted = Gezählt: { $points } Punkte Abzug. Übrige Hinweise: { $left }.
bench-next-again = Seither wurde nichts notiert; es wird nicht noch einmal gezählt.
bench-handed-in = Abgegeben.
bench-handed-in-what = Dieses Paket sagt hier nichts weiter. Wer den Auftrag gestellt hat, bewertet die Datei des Versuchs:
bench-marking = Das Fahrzeug ist übergeben. Bewertung: Ihre Handlungen werden unter jedem möglichen Fehler wiederholt …
bench-page = Die Bewertung mit Diagrammen: { $file }
bench-over = Dieser Auftrag ist beendet. Für einen neuen das Programm noch einmal starten.
bench-no-window = Kein Fenster: { $why }. Stattdessen die Textwerkstatt.
bench-the-script = Skript
bench-not-text = Das war kein UTF-8-Text, also ist nichts geschehen. Die Zeile noch einmal eingeben.
bench-line-long = Zeile { $line } hat { $bytes } Bytes; gelesen werden höchstens { $most } Zeichen, also ist nichts geschehen.
bench-line-not-text = Zeile { $line } ist kein UTF-8-Text, also ist nichts geschehen.

# Wo man steht, wie in der Eingabezeile: Zeit, Ort, Minuten.
bench-at-desk = Schreibtisch
bench-at-cab = Fahrersitz
bench-at-bay = Motorraum
bench-at-front = Fahrzeugfront
bench-at-bench = Werkbank
bench-walk-desk = (Weg zum Schreibtisch: 20 s.)
bench-walk-cab = (Weg zum Fahrersitz: 20 s.)
bench-walk-bay = (Weg zum Motorraum: 20 s.)
bench-walk-front = (Weg zur Fahrzeugfront: 20 s.)
bench-walk-bench = (Weg zur Werkbank: 20 s.)
bench-prompt = { $time } { $place } { $min } min Arbeit>
bench-day = Tag { $n } { $time }

# Was ein Handgriff ergab.
bench-refused = Nicht ausgeführt. { $why }
bench-done = Erledigt.
bench-done-min = Erledigt, Dauer { $min } min.
bench-reading = Ablesung { $n }: { $what }
bench-noted = Notiert, Ablesung { $n }, { $what }: { $value }
bench-entered = Im Protokoll eingetragen: { $line }.
bench-not-entered = Füllt die Protokollzeile { $line } nicht aus: { $why }.
bench-found-unknown = Befund: nicht gefunden; das Fahrzeug bleibt und wird weiterverwiesen.
bench-found-none = Befund: alles innerhalb der Grenzwerte, Sicherheit { $sure }.
bench-found = Befund: { $units }, Sicherheit { $sure }.
bench-safety-minor = Arbeitssicherheit (gering): { $text }
bench-safety-major = Arbeitssicherheit (schwerwiegend): { $text }
bench-safety-critical = Arbeitssicherheit (KRITISCH): { $text }

# Was angesehen wurde; $at ist ein Anschluss oder mehrere.
bench-what-mode = { $it } ({ $mode })
bench-what-at = { $it } an { $at }
bench-what-run = Laufzeit der Pumpe, Stoppuhr
bench-what-rest = Ruhezeit der Pumpe, Stoppuhr
bench-what-hiss = Zischen an { $at }
bench-what-hum = Pumpengeräusch
bench-what-touch = { $at } angefasst
bench-what-travel = Pedalstand unter dem Fuß
bench-what-moved = Bewegung des gehaltenen Pedals
bench-what-applications = unterstützte Betätigungen
bench-what-lamp = Leuchten von { $it }
bench-what-brakes = Grundbremse
bench-what-yard = Bremsprobe auf dem Hof
bench-mode-off = aus
bench-mode-volt = Volt
bench-mode-ohm = Ohm
bench-mode-ampere = Ampere

# Was eine Ablesung zeigte, wenn es keine Zahl ist.
bench-longer = länger als { $s } s
bench-longer-given-up = länger als { $s } s: aufgegeben
bench-off-scale = über dem Skalenende
bench-off-scale-low = unter dem Skalenanfang
bench-dark = dunkel
bench-not-written = ohne Zahl notiert
bench-short-off = über der Skala
bench-short-off-low = unter der Skala
bench-lower-stop = (am unteren Anschlag)
bench-upper-stop = (am oberen Anschlag)
bench-one-mark = { $unit }; ein Teilstrich ist { $division }
bench-display-dark = die Anzeige ist dunkel
bench-level-unclear = unklar
bench-level-more = mehr, als sich sagen lässt
bench-level-less = weniger, als sich sagen lässt
bench-level-none = nichts wahrzunehmen

# Papiere.
bench-caution = Vorsicht: { $text }
bench-defer = Angaben des Fahrzeugherstellers, örtliche Vorschriften und anerkannte Regeln der Technik gehen allem vor, was dieses Programm sagt. Es ist eine Übung, keine Reparaturanleitung.
bench-sheet = Datenblatt
bench-sheet-altitude = Über { $m } m erreicht die Pumpe ihren Ausschaltpunkt womöglich nicht: Grenzwerte am Manometer gelten für den Tagesluftdruck.
bench-nothing-noted = Noch nichts notiert.
bench-suspicion = { $time }  Vermutung: { $text }
bench-finding-unknown = Befund { $n }: nicht gefunden, weiterverwiesen
bench-finding-none = Befund { $n }: alles innerhalb der Grenzwerte, Sicherheit { $sure }
bench-finding = Befund { $n }: { $units }, Sicherheit { $sure }
bench-all-noted = Jede Ablesung ist notiert.
bench-open-readings = Nicht notiert, zählt also nicht. Notieren mit: note NUMMER WERT EINHEIT.
bench-record-limit = Grenzwert: { $text }
bench-record-how = So geht es: { $words }.
bench-record-unmet = Nicht ausgefüllt: { $why }.
bench-record-fill = Eine Zeile ausfüllen mit: note WERT EINHEIT for ZEILE. Freigabeprüfungen kommen nach der letzten Änderung: an einer Verbindung, einem Stopfen oder einer Abklemmzange, einer Baugruppe oder einem Messgerät in einer Unterdruckleitung.
bench-how-day = read barometer
bench-how-battery = fit meter red=battery.plus black=battery.minus, meter volt, read meter
bench-how-run = pedal pump 12 200, key on, time run
bench-how-rest = time rest 900, Fuß weg vom Pedal
bench-how-cut-out = beim Manometer stehen, wait until pump starts, wait until pump stops, read gauge
bench-how-cut-in = beim Manometer stehen, wait until pump starts, read gauge
bench-how-build-up = pedal pump 12 200 bei ausgeschalteter Zündung, key on, time run
bench-how-drop = pedal pump 12 200 bei ausgeschalteter Zündung, pedal press 150, key on, engine idle, wait 10, feel moved
bench-how-reserve = key off, Motor steht, pedal pump 12 200, feel applications
bench-how-no-rise = pedal press 150, engine stop, wait 30, feel moved
bench-how-rest-after = die Pumpe den Speicher füllen lassen, time rest 900
bench-how-yard = brakes, chocks off, extraction off, drive

# Sich umsehen.
bench-engine-stopped = steht
bench-engine-cold = erhöhter Leerlauf, kalt
bench-engine-warm = Leerlauf, warm
bench-engine-cruise = Konstantfahrt
bench-engine-overrun = Schubbetrieb
bench-engine-open = Vollgas
bench-pedal-free = frei
bench-pedal-foot = mit dem Fuß gehalten, { $n } N
bench-pedal-prop = mit der Pedalstütze gehalten, { $n } N
bench-key-on = ein
bench-key-off = aus
bench-chocks-on = angelegt
bench-chocks-off = nicht angelegt
bench-extraction-on = am Auspuff
bench-extraction-off = an der Wand
bench-hum = die Pumpe läuft hörbar
bench-no-hum = von der Pumpe ist nichts zu hören
bench-look = Standort: { $place }. Zündung: { $key }; Motor: { $engine }; Pedal: { $pedal }; Unterlegkeile: { $chocks }; Abgasabsaugung: { $extraction }; { $hum }.
bench-covers-off = Abgenommene Abdeckungen: { $list }.
bench-joints-open = Offene Verbindungen: { $list }.
bench-pulled = Abgezogen: { $list }.
bench-stops = Verschlossen: { $list }.
bench-fitted = Angeschlossen: { $list }.
bench-plug-on = Stopfen auf { $at }
bench-clamp-at = Abklemmzange an { $at }
bench-fitted-at = { $it } an { $at }
bench-minutes = Minuten gearbeitet: { $worked }, gewartet: { $waited }.

# Ein Teil, die Werkzeuge, das Lager.
bench-part = { $name } ({ $place }).
bench-part-behind = { $name } ({ $place }, hinter { $cover }).
bench-part-rubber = Gummi: darf abgeklemmt werden.
bench-part-bright = Blankes Metall.
bench-part-joint = { $a } mit { $b }
bench-part-joint-open = { $a } mit { $b }, offen
bench-part-unit = Baugruppe { $unit }; Ersetzen dauert { $min } min.
bench-tool-cost = Anschließen dauert { $min } min
bench-tool-fitted = (angeschlossen)
bench-tool-dial = Skala { $min } bis { $max }, ein Teilstrich ist { $division }, Klasse { $class } (kann überall auf der Skala um { $wrong } falsch zeigen).
bench-store-unit = Baugruppe
bench-store-spare = Ersatzteil
bench-store-price = Preis
bench-store-min = min
bench-store-what = Bezeichnung
bench-can-clean = Reinigen lassen sich: { $list }.
bench-can-reform = Nachformen lässt sich: { $list }.
bench-can-pull = Herausziehen und einstecken lassen sich: { $list }.

# Das Fahrzeug als Linien.
bench-car-air = Luft: Anschluss ── Verbindung ── Anschluss
bench-car-wiring = Elektrik: Anschluss ── Verbindung ── Anschluss
bench-car-plug = [Stopfen]
bench-car-clamp = [Abklemmzange]
bench-car-open = offen
bench-car-parts = Teile, und von wo man sie erreicht
bench-car-behind = hinter { $cover }
bench-car-rubber = Gummi
bench-car-covers = Abdeckungen
bench-car-cover = { $name }, ab { $off } min, an { $on } min
bench-car-cover-off = (abgenommen)

# Was die Werkstatt nicht beginnen oder weitergehen lässt.
bench-exists = { $file } gibt es schon; fortsetzen mit --resume, oder eine andere Datei nennen
bench-no-such-attempt = { $file }: es gibt keinen solchen Versuch, der fortzusetzen wäre
bench-none-unfinished = in { $folder } liegt kein nicht abgeschlossener Versuch von Ihnen
bench-other-seat = { $file } gehört nicht zum Platz { $seat }
bench-other-job = { $file } ist ein Versuch am Auftrag { $job }, nicht an { $wanted }
bench-no-pack = es gibt kein Paket
bench-no-job = das Paket hat keinen Auftrag
bench-screen-gone = es wird nichts mehr angezeigt, also wird nichts mehr ausgeführt; der Versuch bleibt erhalten
bench-page-failed = die Bewertung steht oben und in { $file }; für eine Seite: pinhole mark { $file } --html DATEI
bench-terminal = das Terminal kann nicht gelesen werden
bench-input = die Standardeingabe kann nicht gelesen werden: { $why }
bench-endless = Standardeingabe, Zeile { $line }: { $bytes } Bytes ohne Zeilenende; erwartet werden Wörter
