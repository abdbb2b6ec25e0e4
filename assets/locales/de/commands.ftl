# Was die Befehle neben der Textwerkstatt sagen: mark, replay, mend, trace. Spaltennamen, JSON und was man tippt (Befehle,
# Optionen) sind in jeder Sprache dieselben.

error-is = Fehler: { $what }
count-actions = { $n ->
    [one] 1 Handlung
   *[other] { $n } Handlungen
}
count-readings = { $n ->
    [one] 1 Ablesung
   *[other] { $n } Ablesungen
}
count-minute-digests = { $n ->
    [one] 1 Minutenprüfsumme
   *[other] { $n } Minutenprüfsummen
}
count-action-digests = { $n ->
    [one] 1 Handlungsprüfsumme
   *[other] { $n } Handlungsprüfsummen
}
count-lines = { $n ->
    [one] 1 Zeile
   *[other] { $n } Zeilen
}

mark-one-page = --html nimmt einen Versuch; angegeben sind { $n }. Für viele: --csv oder --json
mark-at-work = { $file } ({ $n } von { $all }) …
mark-not-marked = { $file }: nicht bewertet
mark-line = { $file }: { $mark }
mark-line-unfinished = nicht abgeschlossen
mark-line-competent = bestanden, { $total } von 100
mark-line-not-yet = noch nicht bestanden, { $total } von 100
mark-line-override = { $holds } (Entscheidung: { $by }; das Programm: { $own })

mend-nothing = { $file }: daran ist nichts beschädigt; nichts wurde geändert.
mend-why = { $file }: { $why }
mend-kept = { $n ->
    [one] Repariert: 1 Handlung bleibt, { $lines } ({ $bytes } Bytes) entfallen; die Bewertung wird es sagen.
   *[other] Repariert: { $n } Handlungen bleiben, { $lines } ({ $bytes } Bytes) entfallen; die Bewertung wird es sagen.
}
mend-original = Die beschädigte Datei bleibt erhalten als { $file }

override-written = { $file }: abweichende Entscheidung { $n } steht hinter der Bewertung.
override-was = Bewertung des Programms, unverändert: { $mark }
override-now = Es gilt: { $mark }

# Was an einem Fahrzeug geprüft werden kann.
tests-of = { $car }: { $n ->
    [one] 1 Prüfung
   *[other] { $n } Prüfungen
}
tests-minutes = Minuten an einem Fahrzeug ohne Fehler, wie es hereinkam, am Ende alles zurückgestellt: Arbeit + unbeaufsichtigt. Namen sind die, die getippt werden.
tests-none = { $car }: niemand hat aufgeschrieben, was sich daran prüfen lässt ({ $file })
tests-no-such = zu { $car } gibt es keine Prüfung namens { $name }; bekannt: { $known }
tests-condition = Der Tag, das Pedal
tests-air = Luft
tests-electric = Strom
tests-by-ear = Horchen
tests-by-eye = Hinsehen
tests-min = { $min } min
tests-covers = Abdeckungen ab: { $list }
tests-joints = geöffnet: { $list }
tests-units = gezogen: { $list }
tests-with = mit: { $list }
tests-lacks = auf der Werkzeugtafel fehlt: { $list }
tests-set-up = Vorbereitung
tests-stimulus = Handlung
tests-readings = Ablesungen
tests-undo = Zurückstellen

replay-differs = { $file }: weicht ab bei { $where }
replay-same = { $file }: { $actions }, { $readings }, { $minutes } und { $digests } stimmen Bit für Bit überein.
replay-digest = Zustandsprüfsumme { $digest } um { $time }
replay-unfinished = Das Fahrzeug ist noch nicht übergeben; dieser Versuch kann fortgesetzt werden.
replay-no-what-if = { $file }: das Fahrzeug ist noch nicht übergeben; ein Was-wäre-wenn gibt es nur für abgeschlossene Versuche. Fortsetzen mit: pinhole text --attempt { $file } --resume
replay-handed-in = { $file }: abgegeben. Das Paket { $pack } sagt nach der Übergabe nichts, also gibt es kein Was-wäre-wenn
replay-no-fault = { $car } hat keinen Fehler { $fault }; bekannt: { $known }
replay-severity = --fault { $fault }={ $typed }: für { $param } ist { $min } bis { $max } zulässig (im Fehlerkatalog steht { $least } bis { $most })
replay-sound = alles innerhalb der Grenzwerte
replay-what-if = Was wäre wenn: { $world }. Dieselben Handlungen, dieselben Toleranzen und Messgeräte.
replay-no = Nr.
replay-reading = Ablesung
replay-was = gezeigt
replay-now = hätte gezeigt
replay-changed = Anders ausgefallen (*): { $readings }.
replay-finding = Der Befund war: { $finding }

trace-rows = { $file }: { $rows } Zeilen, { $columns } Spalten
trace-curves = { $curves ->
    [one] { $file }: 1 Kurve
   *[other] { $file }: { $curves } Kurven
}
trace-circuit = { $file }: { $variables } Größen, { $steps } Schritte, { $changes } Änderungen von außen oder innen
trace-allowed = { $flag } { $typed }: zulässig ist { $min } bis { $max }
trace-line = { $file }, Zeile { $line } ({ $text })
trace-too-many = mehr als 100 000 Zeilen in einer Handlung: --every größer wählen
trace-not-written = --csv { $file } kann nicht geschrieben werden
trace-not-written-why = --csv { $file } kann nicht geschrieben werden: { $why }

# Versehen auf der Befehlszeile. $page sagt, wo mehr steht; $near ist leer oder ein Vorschlag.
slip-page = mehr dazu: { $page }
slip-near = ; gemeint ist vielleicht { $near }
slip-no-option = die Option { $option } gibt es hier nicht{ $near } ({ $page })
slip-too-many = { $word } ist ein Wort zu viel ({ $page })
slip-without-window = { $typed }: dieses Programm ist ohne Fenster gebaut (Feature window)
slip-no-command = den Befehl { $typed } gibt es nicht{ $near } ({ $page })
slip-empty = { $name } ist leer; einen Namen nennen ({ $page })
slip-needs-value = zu { $name } gehört ein Wert ({ $page })
slip-none-of = { $option }: { $value } ist keines von { $valid }{ $near }
slip-why = { $option }: { $why }
slip-value-why = { $option } { $value }: { $why }
slip-twice = { $name } steht zweimal da; einmal genügt ({ $page })
slip-conflict = { $name } und { $other } vertragen sich nicht ({ $page })
slip-missing = es fehlt: { $name } ({ $page })
slip-not-utf8 = ein Wort der Befehlszeile ist kein UTF-8-Text; das dürfen nur Dateinamen sein ({ $page })
slip-not-understood = die Befehlszeile wurde nicht verstanden ({ $page })
slip-range = erwartet wird { $low } bis { $high }
slip-whole = erwartet wird eine ganze Zahl
slip-size-of-number = die Zahl ist zu groß oder zu klein
slip-number = erwartet wird eine Zahl wie 12.5
slip-seed = { $typed } ist kein Startwert: erwartet werden 1 bis 32 Hexadezimalziffern, zum Beispiel 5eed
slip-seat = erwartet werden 1 bis { $most } Zeichen in einer Zeile, zum Beispiel 12
slip-fault = erwartet wird KENNUNG=SCHWERE, zum Beispiel hose_b_pinhole=0.3
slip-every = erwartet wird 0.01 bis 3600 s
slip-pressure = erwartet wird kpa, mbar oder inhg
slip-key = eine Taste { $key } gibt es nicht
slip-size = erwartet wird BREITExHÖHE, 640x360 bis 7680x4320, zum Beispiel 1280x720

mark-folder-page = --html nimmt einen Versuch, keinen Ordner. Für einen Ordner: --csv oder --json
mark-folder-alone = --shard und --results gelten für einen Ordner mit Versuchen: den Ordner allein nennen
many-folder = der Ordner { $folder } lässt sich nicht lesen: { $why }
many-name = { $file }: der Name ist kein UTF-8-Text; die Datei umbenennen
many-none = { $folder } enthält keine Datei, die auf .attempt endet
many-cannot = kann nicht bewertet werden: { $why }
many-stands = schon bewertet
many-progress = { $n } von { $all }: { $file }: { $what }
many-all = { $n ->
    [one] 1 Versuch
   *[other] { $n } Versuche
}: { $competent } bestanden, { $not_yet } noch nicht bestanden, { $unfinished } nicht abgeschlossen, { $failed } nicht zu bewerten
results-trouble = { $file }: { $why }; was schon bewertet ist, bleibt erhalten; noch einmal starten, um fortzufahren
results-in-use = { $file } ist in Gebrauch: dieser Teil wird gerade bewertet
results-unfinished = { $file }: dieser Teil ist nicht fertig; noch einmal starten, um fortzufahren
results-strange = { $file } ist keine ganze Ergebnisdatei von pinhole mark; verschieben
results-none = { $folder } enthält keine Ergebnisdatei (marks-1-of-4.results und so weiter)
results-missing = { $folder } enthält die Teile { $here }; erwartet wird jeder von 1/{ $n } bis { $n }/{ $n } einmal und kein anderer
results-versions = { $file } wurde mit Version { $one } bewertet, { $other } mit { $two }; alle Teile mit einer Version bewerten
slip-shard = erwartet wird K/N mit K von 1 bis N, zum Beispiel 2/4

# Was an den Aufträgen eines Pakets nicht stimmt.
prove-title = Prüfung
prove-secret = Für Verfasser und Lehrende: hier stehen die versteckten Fehler.
prove-job = Auftrag
prove-verdict = Urteil
prove-found = Gefunden
prove-par = Richtzeit, min
prove-card-short = Karte
prove-confirms-short = Bestätigen
prove-columns = Gefunden: an wie vielen gezogenen Fahrzeugen sich der Fehler finden lässt. Richtzeit: Minuten Arbeit + Warten des Musterplans mit den Zeilen des Protokolls. Karte: wie wahrscheinlich die Beanstandung allein den Fehler macht. Bestätigen: welchen Teil des Nachweises hat, wer nur selbst nachsieht, was der Kunde sagte.
prove-passes = besteht
prove-fails = besteht nicht
prove-test = Prüfung
prove-adds = Kostet, min
prove-expected = Erwartet, bit
prove-after = Danach
prove-likeliest = Dann am wahrscheinlichsten
prove-truth = Daran ist es gelegen: { $units }.
prove-on-card = Die Beanstandung allein macht das zu { $p } wahrscheinlich; am wahrscheinlichsten ist { $unit } mit { $best }. Solche Fahrzeuge werden zu { $shows } so beanstandet, heile zu { $sound }.
prove-solved = Gefunden an { $n } von { $cars } gezogenen Fahrzeugen, mit { $median } von { $all } Prüfungen im Mittel und höchstens { $most }.
prove-time = Minuten Arbeit + Warten: { $plan } für den Musterplan allein, { $par } mit dem Protokoll; der Auftrag gibt { $gives }.
prove-confirms = Wer nur die Beanstandung bestätigt ({ $tests }), hat { $p } des Nachweises.
prove-late = { $test }, nach { $n } Minuten
prove-alike-none = Nach allen Prüfungen, die es gibt, sieht nichts anderes ebenso aus.
prove-alike-each = Nach allen Prüfungen, die es gibt, sehen noch ebenso aus: { $list }.
prove-script = Der Musterversuch ist an { $n } von { $all } Fahrzeugen kompetent; seine Ablesungen machen das Richtige zu { $p } wahrscheinlich, er behauptet { $claims }.
prove-planned = { $test }: { $min } min, { $bits } bit erwartet; danach { $p }, am wahrscheinlichsten { $unit } mit { $best }
prove-at-work = { $job } …
prove-tried = Prüfungen an jedem Fahrzeug gemacht: { $n } von { $all }
prove-done = gezogene Fahrzeuge bearbeitet: { $n } von { $all }
prove-played = Musterversuch gespielt: { $n } von { $all }
prove-broken = { $job }: nicht geprüft
prove-cannot = { $job } lässt sich nicht prüfen: das Modell kommt mit dem Fahrzeug nicht weiter
prove-few-healthy = Heile Fahrzeuge: { $n } von { $all } Aufträgen. Es sollten mindestens 15 % sein, sonst ist „irgendetwas ist kaputt“ sicher geraten.
prove-sum = Aufträge, die bestehen: { $n } von { $all }
prove-plan-written = Musterplan geschrieben: { $file }
