# Die Hilfe der Befehlszeile. Befehle, Optionen und ihre Werte tippt man in jeder Sprache gleich.
cli-usage = Aufruf:
cli-usage-options = OPTIONEN
cli-usage-command = BEFEHL
cli-commands = Befehle
cli-arguments = Argumente
cli-options = Optionen
cli-default = Vorgabe:
cli-possible-values = mögliche Werte:
cli-flag-help = Hilfe zeigen
cli-flag-version = Version zeigen
cli-command-help = Hilfe zum Programm oder zu einem Befehl zeigen
cli-value-attempt = VERSUCH
cli-value-attempts = VERSUCHE
cli-value-c = °C
cli-value-car = FAHRZEUG
cli-value-car-or-job = FAHRZEUG-ODER-AUFTRAG
cli-value-dir = ORDNER
cli-value-factor = FAKTOR
cli-value-file = DATEI
cli-value-hex = HEX
cli-value-id-severity = KENNUNG=SCHWERE
cli-value-job = AUFTRAG
cli-value-k-n = K/N
cli-value-keys = TASTEN
cli-value-leaf = BLATT
cli-value-m = M
cli-value-n = ZAHL
cli-value-name = NAME
cli-value-out = DATEI
cli-value-pack-or-job = PAKET-ODER-AUFTRAG
cli-value-part = TEIL
cli-value-port = ANSCHLUSS
cli-value-quality = GÜTE
cli-value-s = S
cli-value-screen = BILD
cli-value-station = ORT
cli-value-tag = KÜRZEL
cli-value-test = PRÜFUNG
cli-value-text = TEXT
cli-value-unit = EINHEIT
cli-value-wxh = BxH

cli-about = Eine Werkstatt, in der die Luft berechnet wird und die Fehler verborgen sind
cli-long =
    Eine Werkstatt, in der die Luft berechnet wird und die Fehler verborgen sind.

    Fehlersuche am Unterdrucksystem des Bremskraftverstärkers lernen: einen Auftrag annehmen, messen, finden, instand setzen, nachweisen, übergeben, und sehen, ob die Ablesungen zu dem Befund berechtigten.
cli-after =
    Beispiele:
      pinhole                                     einen Auftrag annehmen
      pinhole text first-shift/hum-at-the-lights  diesen hier
      pinhole mark my.attempt --html mark.html

    Rückgabewerte: 0 erledigt oder bestanden, 1 erledigt, aber nicht bestanden, 2 falsche Eingabe oder Störung.
    Angaben des Fahrzeugherstellers, örtliche Vorschriften und anerkannte Regeln der Technik gehen diesem Programm vor.
cli-data-help = Ordner mit assets/ und scenarios/ (sonst: PINHOLE_DATA, hier und darüber, beim Programm)
cli-attempts-help = Ordner für Versuche (sonst: der eigene Datenordner)
cli-lang-help = Sprache der Ausgaben, etwa en oder de (sonst: die der Einstellungen, sonst die des Systems)

cli-text-about = Einen Auftrag im Terminal bearbeiten, mit einfachen Wörtern
cli-text-after =
    Beispiele:
      pinhole text
      pinhole text first-shift/hum-at-the-lights
      pinhole text first-shift/hum-at-the-lights --script my.script --attempt my.attempt
      pinhole text --resume

    Ein Skript enthält Zeile für Zeile Wörter, wie man sie an der Eingabe tippt; sie sind in jeder
    Sprache dieselben. Es hält an, wenn eine Zeile abgelehnt wird, außer sie beginnt mit try.
    --script - liest es von der Standardeingabe.
    Wörter aus einer Pipe laufen nach einer Ablehnung weiter, wie an der Eingabe.
    Mit einem Skript ist der Rückgabewert 0 für bestanden, 1 für noch nicht bestanden oder nicht
    abgeschlossen; wo das Paket nach der Übergabe nichts sagt, 0 für abgegeben.
cli-text-job-help = der Auftrag, PAKET/AUFTRAG
cli-text-script-help = Die Wörter aus einer Datei lesen
cli-text-attempt-help = Datei des Versuchs
cli-text-seed-help = Toleranzen und Fehler der Messgeräte hieraus ziehen (1 bis 32 Hexadezimalziffern)
cli-text-seat-help = Wer daran arbeitet, wie ihn die Klasse kennt: eine Nummer oder ein Name, kommt in die Datei des Versuchs; mit --resume: wessen Versuch fortgesetzt wird
cli-text-new-help = Ohne Rückfrage einen neuen Versuch beginnen
cli-text-resume-help = Ohne Rückfrage den nicht abgeschlossenen Versuch fortsetzen

cli-trace-about = Das Modell laufen lassen und für jeden Anschluss Druck, Durchfluss, Spannung, Strom und Temperatur schreiben
cli-trace-after =
    Beispiele:
      pinhole trace alder --csv sound.csv --for 120 --script key-on.script
      pinhole trace alder --fault hose_b_pinhole=0.3 --for 600 --every 1 --csv leak.csv
      pinhole trace alder --show booster.vacuum --show pump.plus_into_a --plot run.png

    Ohne Skript ist die Zündung ein, und niemand fasst etwas an.
    Spalten: t_s; je Anschluss kPa_abs und g/s (aus dem Teil heraus) oder V und A (in das Teil hinein);
    Gehäusetemperaturen in °C; pedal_N und travel_mm. Sie heißen in jeder Sprache gleich.

    --circuit beginnt bei der letzten Änderung von Verbindungen, Stopfen oder Teilen; der Lauf wird von
    dort an wiederholt, ohne die Zeilen der Tabelle, und seine Zeit gemessen.
cli-trace-car-help = das Fahrzeug
cli-trace-fault-help = Ein Fehler mit seiner Schwere; darf mehrmals stehen
cli-trace-script-help = Wörter für das, was getan wird
cli-trace-every-help = Zeit zwischen zwei Zeilen, s
cli-trace-for_s-help = Wie lange es nach dem Skript weitergeht, s
cli-trace-csv-help = Wohin die Tabelle kommt
cli-trace-plot-help = Ein Bild dessen, was --show nennt, über der Zeit (.svg oder .png)
cli-trace-show-help = Ein Anschluss (sein Druck oder seine Spannung) oder eine Spalte der Tabelle; darf mehrmals stehen
cli-trace-circuit-help = Wohin die Gleichungen der Schaltung als Zahlen kommen, mit den Zuständen dieses Laufs, für einen anderen Löser
cli-trace-circuit_after_script-help = Der Abschnitt für --circuit beginnt nach dem Skript und dauert so lange wie --for
cli-trace-altitude-help = Höhe über dem Meer, m
cli-trace-ambient-help = Lufttemperatur, °C

cli-replay-about = Einen Versuch wiederholen und vergleichen; mit --fault: was hätten dieselben Handlungen gezeigt?
cli-replay-after =
    Beispiele:
      pinhole replay my.attempt
      pinhole replay my.attempt --fault hose_m_hole=0.8

    Ein Was-wäre-wenn wird abgelehnt, solange der Versuch nicht abgeschlossen ist.
cli-replay-attempt-help = der Versuch
cli-replay-fault-help = Was, wenn dies der Fehler gewesen wäre? KENNUNG=SCHWERE; darf mehrmals stehen
cli-replay-sound-help = Was, wenn nichts defekt gewesen wäre?

cli-mark-about = Einen Versuch oder viele bewerten
cli-mark-after =
    Beispiele:
      pinhole mark my.attempt
      pinhole mark my.attempt --html mark.html
      pinhole mark class/*.attempt --csv class.csv --json class.json
      pinhole mark class --csv class.csv
      pinhole mark class --shard 2/4 --results shards
      pinhole mark --collect shards --csv class.csv

    Die erste Bewertung eines Versuchs wird hinter der Übergabe in seine Datei geschrieben, wenn die Datei
    geschrieben werden darf und kein Programm sie offen hat; eine spätere wird mit ihr verglichen.
    Der Rückgabewert ist 0, wenn jeder Versuch bestanden ist, 1, wenn einer es nicht ist, 2, wenn eine
    Datei nicht bewertet werden konnte: sie wird genannt, die anderen werden trotzdem bewertet. Hat eine
    Lehrkraft abweichend entschieden, so zählt das.
    Ein Paket mit after_hand_back: Nothing zeigt seine Bewertungen nur hier, und in den Dateien seiner
    Versuche steht keine.

    Ein Ordner wird auf allen Kernen bewertet. Ergebnisse werden festgehalten, wie sie kommen: Wer anhält,
    fährt mit demselben Aufruf fort. Die Versuche selbst bleiben, wie sie sind, und erhalten keine
    Bewertung. Mit --shard bewertet jeder Rechner seinen Teil; --collect setzt die Teile zu denselben Bytes
    zusammen, die ein Rechner allein schriebe.
cli-mark-attempts-help = die Versuche, oder ein Ordner mit Versuchen
cli-mark-shard-help = Von einem Ordner: jeder N-te Versuch in der Reihenfolge der Namen, vom K-ten an, für Rechner, die sich die Arbeit teilen
cli-mark-results-help = Von einem Ordner: wo die Ergebnisse festgehalten werden (sonst: marks in dem Ordner)
cli-mark-collect-help = Die Ergebnisse aller Teile zusammensetzen; bewertet wird nichts
cli-mark-html-help = Die Bewertung als Seite schreiben (nur für einen Versuch)
cli-mark-json-help = Alle Zahlen als JSON schreiben
cli-mark-csv-help = Je Versuch eine Zeile schreiben

cli-override-about = Sagen, dass bei einem bewerteten Versuch eine andere Punktzahl oder ein anderes Urteil gilt, mit Gründen
cli-override-after =
    Beispiele:
      pinhole override my.attempt --by KM --not-yet --reason "Wort für Wort die Notizen vom Nachbarplatz"
      pinhole override my.attempt --by KM --total 75 --competent --reason "das Manometer hing falsch"

    Für Lehrkräfte. Die Bewertung des Programms wird nie geändert: die Entscheidung steht als zweite
    Zeile dahinter, und das Bewertungsblatt zeigt beide und sagt, welche gilt. Was nicht gesagt wird,
    bleibt, wie das Programm es bewertet hat. Mehrere sind möglich: alle bleiben, die letzte gilt. Jede
    ist in die Kette der Datei eingebunden.
    In einem Paket mit after_hand_back: Nothing wird der Versuch zuerst bewertet, und die Bewertung
    steht dann auch in seiner Datei.
cli-override-attempt-help = der bewertete Versuch
cli-override-by-help = Name oder Kürzel
cli-override-reason-help = Warum
cli-override-total-help = die Punktzahl, die gilt, 0 bis 100
cli-override-competent-help = es gilt: bestanden
cli-override-not_yet-help = es gilt: noch nicht bestanden

cli-prove-about = Prüfen, ob sich die Aufträge eines Pakets lösen und nicht raten lassen, mit ihren Musterplänen
cli-prove-after =
    Beispiele:
      pinhole prove first-shift
      pinhole prove first-shift/hum-at-the-lights --cars 5
      pinhole prove first-shift --html proof.html --write-plans

    Für Verfasser und Lehrende: die Ausgabe nennt die versteckten Fehler.
    Jede Prüfung, die die Werkzeugtafel eines Auftrags erlaubt, wird an jedem denkbaren Fahrzeug gemacht; dann
    löst der Planer den Auftrag an Fahrzeugen, wie Versuche sie ziehen. Ein Auftrag dauert einige Minuten. Was
    geprüft ist, wird aufgehoben und erst neu geprüft, wenn sich seine Dateien ändern: wer abbricht, macht mit
    demselben Befehl weiter.
    Der Rückgabewert ist 0, wenn jeder Auftrag besteht, 1, wenn einer nicht besteht, 2, wenn sich einer nicht
    prüfen ließ.

cli-prove-of-help = Das Paket, oder einer seiner Aufträge als PAKET/AUFTRAG
cli-prove-cars-help = An wie vielen gezogenen Fahrzeugen jeder Auftrag gelöst wird (1 bis 200)
cli-prove-results-help = Wo die Ergebnisse aufgehoben werden (sonst: proofs im eigenen Datenordner)
cli-prove-html-help = Die Ergebnisse als Seite schreiben
cli-prove-json-help = Alle Zahlen als JSON schreiben
cli-prove-write_plans-help = Die Musterpläne ins Paket schreiben

cli-mend-about = Von einem beschädigten Versuch erhalten, was ganz ist
cli-mend-after =
    Beispiel:
      pinhole mend my.attempt

    Die ganzen Handlungen vor dem Schaden bleiben, der Rest entfällt, und die Bewertung sagt es von da an.
    Die beschädigte Datei bleibt daneben unter eigenem Namen erhalten.
cli-mend-attempt-help = der beschädigte Versuch

cli-tests-about = Auflisten, was an einem Fahrzeug oder in einem Auftrag geprüft werden kann, mit Minuten und was dazu nötig ist
cli-tests-after =
    Beispiele:
      pinhole tests alder
      pinhole tests first-shift/hum-at-the-lights
      pinhole tests alder hold

    Die Minuten sind die eines Fahrzeugs ohne Fehler, wie es hereinkam, am Ende alles zurückgestellt: Arbeit,
    und hinter dem Plus die, in denen niemand gebraucht wird. In einem Auftrag gelten sie für dessen Tag, und eine
    Prüfung, für die auf dessen Werkzeugtafel etwas fehlt, hat keine.
cli-tests-of-help = das Fahrzeug, oder ein Auftrag als PAKET/AUFTRAG
cli-tests-test-help = eine seiner Prüfungen, die Zeile für Zeile gezeigt wird

cli-window-about = Das Fenster öffnen, in der Auftragsannahme oder in einem Auftrag
cli-window-after =
    Beispiele:
      pinhole window
      pinhole window first-shift/hum-at-the-lights
      pinhole window --attempt my.attempt

    Ohne Bildschirm oder Grafikkarte: pinhole text
cli-window-job-help = der Auftrag, PAKET/AUFTRAG (sonst: die Auftragsannahme)
cli-window-attempt-help = Datei des Versuchs; gibt es sie schon, wird er fortgesetzt
cli-window-seed-help = Toleranzen und Fehler der Messgeräte hieraus ziehen (1 bis 32 Hexadezimalziffern)
cli-window-tree-help = Den Baum für Hilfsmittel (Rolle, Name, Ort) bei jeder Änderung hierhin schreiben

cli-shot-about = Ein Bild der Oberfläche aufnehmen, ohne Bildschirm
cli-shot-after =
    Beispiele:
      pinhole shot room --station bay --out bay.png
      pinhole shot diagram --lang de --size 1920x1080 --out plan.png
      pinhole shot room --script my.script --out later.png
      pinhole shot mark-sheet --attempt my.attempt --out mark.png
cli-shot-screen-help = was zu sehen ist
cli-shot-screen-front-desk = Pakete und Aufträge
cli-shot-screen-room = die Werkstatt, in der Mitte der Raum
cli-shot-screen-diagram = die Werkstatt, in der Mitte der Schaltplan
cli-shot-screen-both = die Werkstatt, Raum und Schaltplan
cli-shot-screen-mark-sheet = die Bewertung
cli-shot-screen-settings = die Einstellungen
cli-shot-out-help = Wohin das Bild kommt (.png)
cli-shot-size-help = Bildpunkte
cli-shot-lang-help = Sprache
cli-shot-job-help = der Auftrag, PAKET/AUFTRAG
cli-shot-attempt-help = Stattdessen einen Versuch zeigen, bis zu seinem Ende wiederholt
cli-shot-script-help = Wörter, die vor dem Bild ausgeführt werden
cli-shot-station-help = Wo das Auge steht (sonst: wo gearbeitet wird)
cli-shot-station-desk = am Schreibtisch mit der Auftragskarte
cli-shot-station-cab = auf dem Fahrersitz
cli-shot-station-bay = vor dem offenen Motorraum
cli-shot-station-front = tief vor dem Fahrzeug
cli-shot-station-bench = an der Werkbank
cli-shot-seed-help = Toleranzen und Fehler der Messgeräte hieraus ziehen
cli-shot-scale-help = Größe der Darstellung, 1.0 bis 2.0
cli-shot-quality-help = Güte des Bilds (sonst: nach der Grafikkarte)
cli-shot-quality-low = wie auf alten Rechnern
cli-shot-quality-high = mit Schatten und Umgebungsverdeckung
cli-shot-leaf-help = Blatt, das auf dem Klemmbrett oben liegt
cli-shot-leaf-card = die Auftragskarte
cli-shot-leaf-sheet = das Datenblatt
cli-shot-leaf-notebook = Notizen und Protokoll
cli-shot-leaf-suspicions = Vermutungen
cli-shot-leaf-finding = der Befund
cli-shot-unit-help = Druckeinheit auf den Skalen: kpa, mbar, inhg
cli-shot-keys-help = Tasten, die vor dem Bild gedrückt werden, eine nach der anderen: F,Enter,text=booster

cli-bench-about = Messen, wie schnell das Modell auf diesem Rechner ist, oder was das Fenster kostet
cli-bench-after =
    Beispiele:
      pinhole bench
      pinhole bench --samples 21 --csv speed.csv
      pinhole bench --window

    Ohne --window: simulierte Sekunden je Sekunde Prozessorzeit für Fahrt, Unterdruckaufbau, Halten
    über Nacht und viele Fahrzeuge, Speicher einer Schaltung, Läufe unter Hypothesen je Sekunde; etwa
    eine Minute.
    Mit --window: braucht eine Grafikkarte, eine in Software genügt, und keinen Bildschirm.
    Mit einem Release-Build auf einem sonst ruhigen Rechner messen.
cli-bench-samples-help = Wie oft jeder Fall gemessen wird
cli-bench-csv-help = Die Tabelle mit allen Stellen schreiben
cli-bench-window-help = Das Fenster: Prozessorzeit je Bild, Zeit bis zum ersten Bild, Speicher
cli-bench-job-help = Mit --window: der Auftrag, der dabei offen ist, PAKET/AUFTRAG
cli-bench-part-help = Nur ein Teil, als JSON; das Programm ruft sich selbst damit auf
cli-bench-part-undrawn = ohne Darstellung
cli-bench-part-drawn = mit der Darstellung des Fensters
