# Was `pinhole bench` den Leuten zeigt; die Tabelle für andere Programme ist in jeder Sprache englisch.

# Das Modell.
speed-line = die gemessenen Fälle brauchen ein Fahrzeug und Messgeräte, mit denen dies geht: { $line }: { $why }
speed-never-stops = die Pumpe von { $car } hat nach { $s } s nicht abgeschaltet; die gemessenen Fälle brauchen eine, die es tut
speed-no-deed = das ist nichts, was man tun kann
speed-refused = abgelehnt ({ $kind })
speed-no-memory = dieses System sagt nicht, wie viel Speicher belegt ist
speed-driving = Fahrt
speed-pull-down = Unterdruckaufbau
speed-hold = Halten über Nacht
speed-many-cars = Fahrt mit { $n } Fahrzeugen
speed-hypotheses = Läufe unter Hypothesen
speed-memory = Speicher
speed-as-in-use = Schritte wie im Gebrauch
speed-one-tick = Schritte von einem Takt
speed-fine = ein Hundertstel des Fehlers
speed-one-by-one = nacheinander
speed-in-lanes = nebeneinander in Bahnen
speed-in-plain-lanes = nebeneinander in Bahnen aus einfachen Registern
speed-on-all-threads = auf allen Threads
speed-side-by-side = nebeneinander
speed-side-on-one = nebeneinander auf einem Thread
speed-side-on-all = nebeneinander auf allen Threads
speed-with-buffers = eine Schaltung mit ihren Puffern
speed-state-alone = ihre Zustandsgrößen allein
speed-by-processor = simulierte s je s Prozessorzeit
speed-by-the-clock = simulierte s je s nach der Uhr
speed-runs-by-processor = Läufe je s Prozessorzeit
speed-runs-by-the-clock = Läufe je s nach der Uhr
speed-bytes = Bytes
speed-head-case = Fall
speed-head-how = wie
speed-head-best = bester
speed-head-median = Median
speed-head-of = von
speed-head-beside = daneben, nach dem besten
speed-threads = { $threads } Threads; bester Wert und Median aus { $samples }.
speed-no-release = Das ist kein Release-Build: seine Zahlen sagen wenig.
speed-a-run = Ein Lauf unter einer Hypothese ist ein Versuch von { $minutes } Minuten Arbeit im Fahrzeug einer von { $worlds } Hypothesen und Ziehungen.

# Das Fenster.
frames-not-run = das Programm kann sich nicht selbst aufrufen
frames-part = Teil { $part }: { $why }
frames-told = was Teil { $part } sagte
frames-not-drawn = nichts wurde gemessen: Tafeln oder Raum wurden nicht gezeichnet
frames-nothing = nichts wurde gemessen
frames-no-reference = der Auftrag hat keinen Musterversuch
frames-picture = Fenster, { $width } x { $height } px, Auftrag { $job }, Motor läuft
frames-adapter = Grafikkarte: { $adapter } ({ $kind })
frames-software = in Software
frames-hardware = in Hardware
frames-not-known = unbekannt
frames-undrawn = Prozessorzeit je Bild, nichts gezeichnet
frames-drawn = Prozessorzeit je Bild, gezeichnet
frames-first = erstes Bild nach dem Start
frames-room = der ganze Raum nach dem Start
frames-memory = größter Speicherbedarf, gezeichnet
