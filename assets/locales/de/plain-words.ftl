# Die Wörter der Textwerkstatt: ihre Hilfe, und was zu sagen ist, wenn eine Zeile nicht verstanden wird. Die Wörter selbst
# (fit, note, wait until pump stops), die Kurznamen und die Einheiten tippt man in jeder Sprache gleich; Zahlen dürfen einen
# Punkt oder ein Komma haben.

help-group-paper = Papiere
help-group-look = Umsehen (frei)
help-group-states = Bleibende Zustände
help-group-time = Zeit
help-group-senses = Sinne
help-group-instruments = Messgeräte
help-group-hands = Handgriffe
help-group-right = Instand setzen
help-group-end = Ende
help-foot =
    help WORT sagt mehr, mit Beispielen. Die Wörter werden in jeder Sprache gleich
    getippt, ebenso Namen wie <hose>, <branch> oder <spare> (mit - oder _); die
    Tabulatortaste ergänzt sie. Arbeiten und Warten kosten Werkstattminuten, Papiere
    je eine. Nur was notiert ist, zählt als Nachweis. Handschuhe, Ärmelschutz und
    Brille gelten als angelegt: dafür gibt es kein Wort.
help-also = Ebenfalls verstanden:
help-flag = diese Seite
help-arg-back = back
help-arg-instrument = gerät
help-arg-joint = verbindung
help-arg-max = höchstens
help-arg-mode = stellung
help-arg-name = name
help-arg-numbers = zahlen
help-arg-part = teil
help-arg-port = anschluss
help-arg-state = stellung
help-arg-unit = baugruppe
help-arg-what = was
help-arg-words = wörter

help-word-card = Die Auftragskarte lesen: was die Kundschaft sagt, und die Gefahren
help-word-card-after = Beispiel: card
help-word-sheet = Das Datenblatt des Fahrzeugs lesen: Grenzwerte, Schaltpunkte, Hinweis zur Höhe
help-word-sheet-after = Beispiel: sheet
help-word-chocks = Unterlegkeile anlegen oder wegnehmen
help-word-chocks-state = on (anlegen) oder off (wegnehmen)
help-word-chocks-after = Beispiele: chocks on · chocks off
help-word-extraction = Die Abgasabsaugung ans Auspuffrohr hängen oder zurück an die Wand
help-word-extraction-state = on (ans Auspuffrohr) oder off (an die Wand)
help-word-extraction-after =
    Beispiele: extraction on · extraction off
    Bevor ein Motor im Raum läuft; vor der Fahrt abnehmen.
help-word-key = Den Zündschlüssel drehen (on = Stellung 15, der Motor muss nicht laufen)
help-word-key-state = on (ein) oder off (aus)
help-word-key-after = Beispiele: key on · key off
help-word-engine = Den Motor starten, laufen lassen oder abstellen
help-word-engine-state-idle = Leerlauf, warm (startet den Motor, wenn er steht)
help-word-engine-state-cold = erhöhter Leerlauf eines kalten Motors
help-word-engine-state-cruise = gleichbleibende Drehzahl, wenig Gas
help-word-engine-state-overrun = Schub: Drosselklappe zu bei Drehzahl
help-word-engine-state-open = Vollgas: Drosselklappe ganz offen
help-word-engine-state-stop = Motor aus
help-word-engine-after =
    Beispiele: engine idle · engine stop
    Dazu muss die Zündung ein sein.
help-word-pedal = Das Bremspedal treten, abstützen, loslassen oder mehrmals betätigen
help-word-pedal-what = press (treten), prop (abstützen), release (loslassen), pump (mehrmals)
help-word-pedal-numbers = Kraft in N; bei pump: wie oft, dann die Kraft
help-word-pedal-after =
    Beispiele:
      pedal press 200     mit dem Fuß halten, 200 N (das bindet an den Fahrersitz)
      pedal prop 150      mit der Pedalstütze halten, man kann weggehen
      pedal release
      pedal pump 5        fünf Betätigungen mit 120 N, eine kräftige Bremsung
      pedal pump 5 300    fünf mit 300 N
help-word-cover = Eine Abdeckung abnehmen oder wieder anbauen
help-word-cover-words = die Abdeckung, dann off (ab) oder on (an)
help-word-cover-after = Beispiele: cover <cover> off · cover <cover> on
help-word-open = Eine Verbindung lösen: Schlauch abziehen, Stecker ziehen, Klemme lösen
help-word-open-joint = eine Verbindung, oder ein Anschluss, der nur zu einer gehört
help-word-open-after =
    Beispiele: open <joint> · open <hose>.b
    Das Wort car zeigt alle Verbindungen. Vor dem Lösen einer Unterdruckverbindung das
    Pedal treten, bis der Speicher leer ist.
help-word-join = Eine Verbindung wieder herstellen
help-word-join-words = eine Verbindung, oder ein Anschluss, der nur zu einer gehört
help-word-join-after = Beispiel: join <joint>
help-word-plug = Einen offenen Anschluss mit einem Gummistopfen verschließen
help-word-plug-port = der Anschluss: teil.anschluss
help-word-plug-after = Beispiel: plug <branch_3>   (nach dem Lösen seiner Verbindung)
help-word-clamp = Einen Gummischlauch neben einem Anschluss abklemmen
help-word-clamp-port = der Anschluss: teil.anschluss
help-word-clamp-after =
    Beispiel: clamp <hose>.a
    Nur Gummi: hartes Rohr bricht unter der Abklemmzange.
help-word-free = Stopfen oder Abklemmzange wegnehmen
help-word-free-port = der Anschluss: teil.anschluss
help-word-free-after = Beispiel: free <hose>.a
help-word-unplug = Einen Stecker ziehen (wie open) oder einen Stopfen herausnehmen (wie free)
help-word-unplug-name = eine Verbindung oder ein verschlossener Anschluss
help-word-unplug-after = Beispiele: unplug <plug> · unplug <branch_3>
help-word-pull = Etwas Steckbares (Relais, Sicherung) aus dem Sockel ziehen
help-word-pull-unit = die Baugruppe
help-word-pull-after = Beispiele: pull relay · pull fuse
help-word-push = Etwas Steckbares (Relais, Sicherung) wieder einstecken
help-word-push-unit = die Baugruppe
help-word-push-after = Beispiel: push relay
help-word-swap = Eine Baugruppe durch ein Ersatzteil aus dem Lager ersetzen
help-word-swap-words = die Baugruppe, dann (with) das Ersatzteil
help-word-swap-after =
    Beispiele: swap <unit> with <spare> · swap <unit>
    Das Wort store zeigt die Ersatzteile mit ihren Preisen. Ein weggeworfenes Teil kostet,
    auch wenn es gut war.
help-word-clean = Eine Baugruppe reinigen: Kontakte, Massepunkte, Ventilsitze
help-word-clean-unit = die Baugruppe
help-word-clean-after = Beispiel: clean <cleaned>
help-word-reform = Einen Schlauch mit Heißluft nachformen, bis der Bogen wieder passt (ein Notbehelf)
help-word-reform-unit = der Schlauch
help-word-reform-after = Beispiel: reform <bend>
help-word-fit = Ein Messgerät anschließen
help-word-fit-words = das Messgerät, dann wohin seine Enden kommen
help-word-fit-after =
    Beispiele:
      fit gauge <branch>                     T-Stück in einer Verbindung, oder auf einem offenen Anschluss
      fit handpump <booster>
      fit meter red=<live> black=<earth>   oder: fit meter <live> <earth>
      fit lamp <plus> <coil>
      fit infrared <pump>                     das Infrarotthermometer darauf richten
    Das Wort tools zeigt die Messgeräte, das Wort car die Anschlüsse.
help-word-take = Ein Messgerät abnehmen und an die Werkzeugwand zurückhängen
help-word-take-words = das Messgerät
help-word-take-after = Beispiele: take gauge · take meter off
help-word-meter = Das Multimeter einstellen: volt, ohm (nur stromlos), amp (über seine Sicherung), off
help-word-meter-mode-amp = Ampere über die abgesicherte Buchse
help-word-meter-instrument = welches Multimeter, wenn es mehrere gibt
help-word-meter-after = Beispiele: meter volt · meter ohm · meter amp · meter off
help-word-press = Den Taster der Prüfleitung oder den Lösehebel der Handpumpe gedrückt halten
help-word-press-instrument = das Gerät
help-word-press-after =
    Beispiele: press button · press handpump (Luft strömt langsam ein)
    Für das Bremspedal: pedal press 200.
help-word-let = Taster oder Lösehebel loslassen
help-word-let-words = das Gerät
help-word-let-after = Beispiel: let button
help-word-stroke = Mit der Handunterdruckpumpe pumpen
help-word-stroke-words = das Gerät und die Zahl der Hübe
help-word-stroke-after = Beispiel: stroke handpump 10
help-word-read = Ein Messgerät ablesen: eine Skala, eine Anzeige, das Barometer an der Wand
help-word-read-instrument = das Messgerät
help-word-read-after =
    Beispiele: read gauge · read meter · read barometer
    Eine Ablesung zählt erst, wenn sie notiert ist.
help-word-hiss = Ein Teil mit dem Abhörschlauch auf Zischen abhören
help-word-hiss-part = das Teil
help-word-hiss-after =
    Beispiel: hiss <hose>

    Es zischt, wo Luft aus dem Raum eintritt: dazu braucht es Unterdruck im Speicher und
    ein Loch, das nicht zu klein ist; Luft, die innen von einem Teil ins andere strömt,
    hört man nicht. Nichts zu hören beweist deshalb wenig.
help-word-hum = Hören, ob die Pumpe läuft
help-word-hum-after = Beispiel: hum
help-word-touch = Ein Teil anfassen und fühlen, wie warm es ist
help-word-touch-part = das Teil
help-word-touch-after = Beispiel: touch <pump>
help-word-feel = Am Bremspedal fühlen
help-word-feel-what-pedal = wie tief das gehaltene Pedal steht
help-word-feel-what-moved = wie sich das gehaltene Pedal beim letzten Starten oder Abstellen bewegt hat
help-word-feel-what-applications = wie viele unterstützte Betätigungen das letzte Pumpen ergab
help-word-feel-after =
    Beispiele:
      feel pedal           wie tief das gehaltene Pedal steht
      feel moved           wie es sich beim letzten Starten oder Abstellen des Motors bewegt hat
      feel applications    wie viele unterstützte Betätigungen das letzte Pumpen ergab
help-word-look = Sich umsehen; oder ein Teil, eine Lampe, die Grundbremse ansehen
help-word-look-what = nichts, ein Teil, eine Lampe, oder brakes
help-word-look-after =
    Beispiele:
      look           was offen, angeschlossen und eingeschaltet ist (frei)
      look <hose>    wo es ist, woraus und womit verbunden (frei)
      look lamp      leuchtet sie?
      look brakes    Flüssigkeitsstand, Schläuche, Scheiben und Beläge, Druckpunkt ohne Unterstützung
help-word-brakes = Die Grundbremse ansehen: Flüssigkeit, Schläuche, Scheiben, Beläge, Druckpunkt ohne Unterstützung
help-word-brakes-after = Beispiel: brakes
help-word-drive = Langsam auf dem Hof fahren und bremsen
help-word-drive-after = Beispiel: drive   (Keile weg, Motor im Leerlauf, alles verbunden)
help-word-time = Laufzeit oder Ruhezeit der Pumpe stoppen; auf Wunsch mit der längsten Wartezeit in Sekunden
help-word-time-what-run = von jetzt (oder vom nächsten Anlaufen) bis die Pumpe stehen bleibt
help-word-time-what-rest = von jetzt (oder vom nächsten Stehenbleiben) bis die Pumpe wieder anläuft
help-word-time-max = längste Wartezeit
help-word-time-after = Beispiele: time run 120 · time rest 900 · time rest 30min
help-word-wait = Eine Weile warten, oder bis etwas zu hören oder zu sehen ist
help-word-wait-words = eine Zeit; oder until, worauf, und die längste Wartezeit
help-word-wait-after =
    Beispiele:
      wait 30
      wait 10min
      wait until pump stops 120     bis die Pumpe stehen bleibt; nach 120 s aufgeben
      wait until pump starts        bis sie anläuft
      wait until lamp out           bis die Lampe erlischt
help-word-overnight = Das Fahrzeug über Nacht stehen lassen: 12 Stunden, Zündung und Motor aus
help-word-overnight-after = Beispiel: overnight
help-word-note = Eine Ablesung notieren: nur was notiert ist, zählt
help-word-note-words = Nummer der Ablesung, Wert mit Einheit, for und eine Protokollzeile
help-word-note-after =
    Beispiele:
      note -58 kPa                  die letzte Ablesung, mit Einheit und Vorzeichen
      note 7 100.6 kPa for day       Ablesung 7, für die Protokollzeile day
      note                          die letzte Ablesung, wenn sie gefühlt, gehört oder gesehen ist
      note for drop                 dasselbe, für eine Protokollzeile
    Das Wort list zeigt, was nicht notiert ist, das Wort record die Zeilen des Protokolls.
    In Skripten: note shown [for ZEILE] notiert, was gezeigt wurde.
help-word-suspect = Eine Vermutung in eigenen Worten festhalten (wird nie bewertet)
help-word-suspect-words = der Text
help-word-suspect-after = Beispiel: suspect "Leck am Bremskraftverstärker"
help-word-finding = Sagen, was defekt ist und wie sicher das ist. Die erste Reparatur sperrt den ersten Befund
help-word-finding-words = Baugruppen, dann sure und eine Zahl
help-word-finding-after =
    Beispiele:
      finding <unit> sure 0.80
      finding pump strap sure 0.60    beide liegen außerhalb ihrer Grenzwerte
      finding none sure 0.80          alles liegt innerhalb der Grenzwerte
      finding unknown                 nicht gefunden: das Fahrzeug bleibt und wird weiterverwiesen
    Die Sicherheit ist 0.40, 0.60, 0.80 oder 0.95 (auch mit Komma). Ein falscher Befund, zu
    sicher gesagt, kostet am meisten. Wo die Schule die Sicherheit festlegt, entfällt sie.
help-word-hand = Das Fahrzeug übergeben: der Auftrag ist beendet
help-word-hand-back = back
help-word-hand-after = Beispiel: hand back   (nach den Freigabeprüfungen)
help-word-car = Das Fahrzeug zeigen: Teile, Anschlüsse und Verbindungen
help-word-car-after = Beispiel: car
help-word-tools = Die Messgeräte an der Werkzeugwand zeigen
help-word-tools-instrument = eines davon
help-word-tools-after = Beispiele: tools · tools gauge
help-word-store = Die Ersatzteile im Lager zeigen, und was sich reinigen oder nachformen lässt
help-word-store-after = Beispiel: store
help-word-notebook = Die Notizen zeigen
help-word-notebook-after = Beispiel: notebook
help-word-list = Die Ablesungen zeigen, die noch nicht notiert sind
help-word-list-after = Beispiel: list
help-word-next = Fragen, welche Prüfung jetzt am meisten verraten würde; jedes Mal kostet Punkte
help-word-next-after = Beispiel: next
help-word-record = Die Zeilen des Prüfprotokolls zeigen, und welche ausgefüllt sind
help-word-record-after = Beispiel: record
help-word-mark = Die Bewertung zeigen, nach der Übergabe
help-word-mark-after = Beispiel: mark
help-word-quit = Die Werkstatt verlassen; der Versuch bleibt und kann fortgesetzt werden
help-word-quit-after = Beispiel: quit

# Eine Zeile, die nicht verstanden wird.
plain-unknown-word = das Wort { $word } ist hier unbekannt; { $hint }
plain-too-long = eine Zeile mit { $count } Zeichen; gelesen werden höchstens { $most }
plain-shape = { $problem }; Beispiel: { $example }
plain-all-words = help zeigt alle Wörter
plain-did-you-mean-word = gemeint ist vielleicht { $near } (help zeigt alle Wörter)
plain-did-you-mean = gemeint ist vielleicht { $near }
plain-did-you-mean-two = gemeint ist vielleicht { $first } oder { $second }
plain-did-you-mean-three = gemeint ist vielleicht { $first }, { $second } oder { $third }
plain-did-you-mean-four = gemeint ist vielleicht { $first }, { $second }, { $third } oder { $fourth }
plain-known = bekannt: { $names }
plain-list-more = { $names } und { $left } weitere
plain-list-none = nichts
plain-no-part = es gibt kein Teil namens { $name }; { $hint }
plain-no-port = es gibt keinen Anschluss namens { $name }; { $hint }
plain-no-joint = es gibt keine Verbindung namens { $name }; { $hint }
plain-no-unit = es gibt keine Baugruppe namens { $name }; { $hint }
plain-no-cover = es gibt keine Abdeckung namens { $name }; { $hint }
plain-no-record = es gibt keine Protokollzeile namens { $name }; { $hint }
plain-no-spare = es gibt kein Ersatzteil namens { $name }; { $hint }
plain-no-instrument = es gibt kein Messgerät namens { $name }; { $hint }
plain-has-no-part = dieser Auftrag hat kein Teil
plain-has-no-port = dieser Auftrag hat keinen Anschluss
plain-has-no-joint = dieser Auftrag hat keine Verbindung
plain-has-no-unit = dieser Auftrag hat keine Baugruppe
plain-has-no-cover = dieser Auftrag hat keine Abdeckung
plain-has-no-record = dieser Auftrag hat keine Protokollzeile
plain-has-no-spare = dieser Auftrag hat kein Ersatzteil
plain-has-no-instrument = dieser Auftrag hat kein Messgerät
plain-has-no-multimeter = dieser Auftrag hat kein Multimeter
plain-has-no-hand-pump = dieser Auftrag hat keine Handunterdruckpumpe
plain-a-part = ein Teil des Fahrzeugs
plain-a-joint = eine Verbindung am Fahrzeug
plain-a-cover = eine Abdeckung
plain-an-instrument = ein Messgerät
plain-is-a-name = das ist { $what } ({ $word }): dazu sagen, was damit geschehen soll
plain-not-taken = zu { $word } gehört kein { $value }, sondern eines von: { $valid }
plain-not-taken-near = zu { $word } gehört kein { $value }: gemeint ist vielleicht { $near }
plain-one-more = zu { $word } fehlt noch ein Wort, eines von: { $valid }
plain-not-enough = nach { $word } fehlt noch etwas
plain-too-much = nach { $word } ist { $what } nicht zu verstehen
plain-not-understood = nicht verstanden: { $word }
plain-no-line = das ist keine ganze Zeile
plain-walk = der Weg zur Arbeit ergibt sich von selbst; einfach sagen, was zu tun ist
plain-say-how = sagen, wie: ein Messgerät anschließen und ablesen, die Pumpe stoppen, oder fühlen, hören und sehen
plain-say-line = tippen: { $line }
plain-nothing-joined = dort ist nichts verbunden
plain-several-joints = dort treffen sich mehrere Verbindungen: { $names }
plain-part-joints = dieses Teil hat die Verbindungen { $names }
plain-part-ports = dieses Teil hat { $names }
plain-store-none = im Lager gibt es kein Ersatzteil für { $unit }
plain-store-several = im Lager gibt es mehrere Ersatzteile für { $unit }: { $names }
plain-join-one = immer nur eine Verbindung herstellen, mit ihrem Namen
plain-take-one = immer nur ein Messgerät abnehmen
plain-let-what = was loslassen?
plain-pedal-word = das Pedal hat ein eigenes Wort
plain-pedal-many = zu viele Wörter nach pedal
plain-no-force = { $typed } ist keine Kraft in N
plain-how-many-times = wie oft?
plain-how-many-strokes = wie viele Hübe?
plain-number-of-applications = Zahl der Betätigungen: { $why }
plain-number-of-strokes = Zahl der Hübe: { $why }
plain-cover-off-or-on = sagen, ob die Abdeckung { $cover } ab (off) oder an (on) soll
plain-which-cover = sagen, welche Abdeckung, und off oder on
plain-swap = Baugruppe und Ersatzteil nennen
plain-fit = das Messgerät nennen, und wohin es kommt
plain-fit-where = wohin mit { $it }?
plain-watch = die Stoppuhr ist in der Tasche; tippen, zum Beispiel: time rest 900
plain-read-in-place = es wird abgelesen, wo es hängt
plain-not-fitted = hier gibt es nichts anzuschließen ({ $it }); { $how }
plain-one-end = nur ein Ende hat { $it }
plain-ends = nur { $n } Enden hat { $it }
plain-no-end = ein Ende { $end } hat { $it } nicht, nur { $ends }
plain-no-end-of-two = ein Ende { $end } hat { $it } nicht, nur { $first } und { $second }
plain-how-long = wie lange?
plain-wait-until = gewartet wird auf pump stops, pump starts, lamp out oder lamp on
plain-no-unit-of-time = { $typed } ist keine Zeiteinheit (s, min, h)
plain-no-time = { $typed } ist keine Zeit von 0 bis { $most } s
plain-no-reading-yet = es gibt noch keine Ablesung zum Notieren: zuerst etwas ablesen, stoppen, fühlen oder hören
plain-no-reading = eine Ablesung { $id } gibt es nicht; bisher sind es 1 bis { $last }. Wenn { $id } der Wert ist, gehört seine Einheit dazu
plain-reading-is-number = Ablesung { $id } ist eine Zahl: den abgelesenen Wert mit Einheit aufschreiben
plain-note-for = nach for die Protokollzeile nennen
plain-note-no-unit = { $typed } mit Einheit aufschreiben (kPa, V, A, ohm, C, s, deg, mm)
plain-note-is = eine Notiz ist: Nummer der Ablesung, wenn es nicht die letzte ist, Wert und Einheit, for und eine Protokollzeile
plain-no-such-unit = { $typed } ist keine Einheit dieser Werkstatt (kPa, V, A, ohm, C, s, deg, mm)
plain-which-unit = sagen, welche Baugruppe außerhalb ihrer Grenzwerte liegt, oder none
plain-how-sure = die Sicherheit angeben: sure 0.40, 0.60, 0.80 oder 0.95
plain-no-step = { $typed } ist keine Stufe der Sicherheit: { $steps }
plain-sure-fixed = die Schule legt fest, wie sicher ein Befund ist, nämlich { $fixed }: ohne sure angeben

# Zahlen.
number-none = { $typed } ist keine Zahl; in Ziffern schreiben, zum Beispiel 12,5
number-not-finite = { $typed } ist keine endliche Zahl; eine in Ziffern schreiben, zum Beispiel 12,5
number-not-in-tens = { $typed } ist keine Dezimalzahl; mit den Ziffern 0 bis 9 schreiben, zum Beispiel 16
number-too-long = { $typed } ist eine Zahl mit { $count } Zeichen; gelesen werden höchstens { $most }
number-too-large = { $typed } ist zu groß; Zahlen gehen hier bis { $most }
number-not-whole = { $typed } ist keine ganze Zahl; eine von { $low } bis { $high } schreiben
number-not-finite-nor-whole = { $typed } ist keine endliche Zahl; eine ganze von { $low } bis { $high } schreiben
number-outside = { $typed } liegt nicht zwischen { $low } und { $high }
