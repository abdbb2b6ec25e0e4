# Nennt die versteckten Fehler: nicht lesen, bevor die Aufträge bearbeitet sind.
# Was die Aufträge des Pakets »first-shift« sagen: Kundin oder Kunde, Vorsicht, Auflösung.

-yard-pump = Bei eingeschalteter Zündung läuft die Pumpe von selbst an, mit Start-Stopp auch der Motor: vor jedem Eingriff Zündung aus und Pumpensicherung heraus.
-yard-hot = Pumpe und Abgasanlage sind heiß, Riemen und Lüfter drehen sich: eng anliegende Kleidung, nichts anfassen, was gerade in Betrieb war.
-yard-assist = Ist der Unterdruckvorrat abgebaut, fehlt die Bremskraftunterstützung: zuerst Unterlegkeile anlegen, und niemand bewegt das Fahrzeug vor den Freigabeprüfungen.
-yard-battery = Batterie: Minuspol zuerst abklemmen und zuletzt anklemmen, und nie die Pole kurzschließen.
-yard-exhaust = Abgase in geschlossenen Räumen: Abgasabsaugung anschließen und einschalten, bevor der Motor läuft.

job-first-shift-hum-at-the-lights = An der Ampel brummt es jede Minute
job-first-shift-hum-at-the-lights-says-1 = Es brummt etwa jede Minute, wenn ich an der Ampel stehe, der Motor aus ist und mein Fuß nicht auf dem Pedal.
job-first-shift-hum-at-the-lights-says-2 = Irgendwo vorn, zwei oder drei Sekunden lang, dann ist es ruhig, dann brummt es wieder.
job-first-shift-hum-at-the-lights-says-3 = Die Bremsen fühlen sich für mich gut an. Ich möchte nur sicher sein, dass es nichts Ernstes ist.
job-first-shift-hum-at-the-lights-caution-1 = { -yard-pump }
job-first-shift-hum-at-the-lights-caution-2 = { -yard-hot }
job-first-shift-hum-at-the-lights-caution-3 = { -yard-assist }
job-first-shift-hum-at-the-lights-caution-4 = { -yard-battery }
job-first-shift-hum-at-the-lights-caution-5 = { -yard-exhaust }
job-first-shift-hum-at-the-lights-caution-6 = Vor kurzem hereingefahren: der Motorraum ist noch warm.
job-first-shift-hum-at-the-lights-debrief-1 = Das Rückschlagventil zum Motor ließ an seinem Sitz Luft zurück, wie ein Loch von gut zwei Zehntelmillimetern. Bei stehendem Motor ist das Saugrohr voll Luft, und durch das Ventil gelangte sie in den Speicher; die Pumpe musste sie etwa alle 50 Sekunden wieder heraussaugen.
job-first-shift-hum-at-the-lights-debrief-2 = Die Ruhe zwischen zwei Läufen, ohne dass jemand das Pedal berührt, ist eine Leckrate. Im Leerlauf steht auch das Saugrohr unter Unterdruck, dann leckt nichts und niemand hört etwas: Der Fehler zeigt sich nur an der Ampel.
job-first-shift-hum-at-the-lights-debrief-3 = Was es beweist: den Schlauch von der Quellseite dieses Ventils abziehen, das Ventil dort verschließen, und das Manometer steht still; den Stopfen ziehen, und es fällt, mit einem Zischen. Das andere Ventil ebenso verschließen, und nichts ändert sich. Eine Handpumpe an der Quellseite eines Rückschlagventils sagt nichts: Luft muss von der Quelle zum Speicher hin versucht werden.
job-first-shift-hum-at-the-lights-debrief-4 = Die Pumpe hat unter diesem Fehler viel zu tun, ist aber nicht seine Ursache. Eine neue Pumpe hätte ebenso oft gebrummt.

job-first-shift-flat-after-the-weekend = Batterie leer nach dem Wochenende
job-first-shift-flat-after-the-weekend-says-1 = Am Montag war die Batterie leer; das Auto hatte seit Freitag gestanden. Am Samstagmorgen hat ein Nachbar ein Brummen daraus gehört, obwohl niemand in der Nähe war.
job-first-shift-flat-after-the-weekend-says-2 = Die Werkstatt nebenan hat die Batterie geladen, bevor das Auto hierher geschleppt wurde. Die Batterie selbst sei in Ordnung, hieß es.
job-first-shift-flat-after-the-weekend-says-3 = Vorher ist mir nichts aufgefallen. Die Bremsen waren gut.
job-first-shift-flat-after-the-weekend-caution-1 = { -yard-pump }
job-first-shift-flat-after-the-weekend-caution-2 = { -yard-hot }
job-first-shift-flat-after-the-weekend-caution-3 = { -yard-assist }
job-first-shift-flat-after-the-weekend-caution-4 = { -yard-battery }
job-first-shift-flat-after-the-weekend-caution-5 = { -yard-exhaust }
job-first-shift-flat-after-the-weekend-caution-6 = Hereingeschleppt, Batterie frisch geladen: auf der 12-V-Seite kann bei ausgeschalteter Zündung alles unter Spannung stehen.
job-first-shift-flat-after-the-weekend-debrief-1 = Der Kontakt des Pumpenrelais war verschweißt. Bei ausgeschalteter Zündung ist die Spule stromlos, und doch lief die Pumpe, bis die Batterie leer war.
job-first-shift-flat-after-the-weekend-debrief-2 = Dass sie bei ausgeschalteter Zündung lief, sagt, wo zu suchen ist: Ein verschweißter Unterdruckschalter hört mit der Zündung auf, denn Klemme 15 speist die Spule. Entweder hat die Spule noch Strom, weil der Zündschalter Klemme 15 unter Spannung lässt, oder hinter der Spule ist Batterie-Plus mit der Pumpe verbunden. Die Spannung an 86 bei ausgeschalteter Zündung trennt beide; und läge es am Zündschalter, wäre die Pumpe von selbst stehen geblieben, sobald sie ihren Unterdruck hatte.
job-first-shift-flat-after-the-weekend-debrief-3 = Dass sie nach Minuten noch brummt, sagt nur noch einmal, was der Kunde sagte: Eine Brücke, die jemand unter dem Relaissockel vergaß, brummt ebenso lange. Ziehen Sie das Relais: Stille belastet seinen Kontakt; brummt es weiter, sind es der Sockel oder die Leitungen.
job-first-shift-flat-after-the-weekend-debrief-4 = Ein Ohmmeter über 30 und 87 des Relais in der Hand zeigt fast nichts; ein gutes Relais zeigt OL.
job-first-shift-flat-after-the-weekend-debrief-5 = Eine Pumpe, die ein Wochenende lang läuft, wird sehr heiß und altert. Unterdruck, Strom und Laufzeit waren eine Messung wert, bevor das Fahrzeug zurückging: Hier hatte sie keinen Schaden genommen.

job-first-shift-hard-first-press = Hartes Pedal beim ersten Tritt am Morgen
job-first-shift-hard-first-press-says-1 = Morgens als Erstes ist das Pedal steinhart. Aus Gewohnheit trete ich es, bevor ich den Schlüssel drehe, und es gibt gar nicht nach.
job-first-shift-hard-first-press-says-2 = Ist das Auto einmal an, ist es für den Rest des Tages gut. Abends kann ich es bei stehendem Motor gleich nach dem Anhalten noch ein paarmal treten.
job-first-shift-hard-first-press-says-3 = Es begann im Herbst und wurde schlimmer.
job-first-shift-hard-first-press-caution-1 = { -yard-pump }
job-first-shift-hard-first-press-caution-2 = { -yard-hot }
job-first-shift-hard-first-press-caution-3 = { -yard-assist }
job-first-shift-hard-first-press-caution-4 = { -yard-battery }
job-first-shift-hard-first-press-caution-5 = { -yard-exhaust }
job-first-shift-hard-first-press-caution-6 = Über Nacht stehen lassen, und der erste Tritt ist hart: dem, der fährt, aus dem Weg bleiben und die Unterlegkeile liegen lassen.
job-first-shift-hard-first-press-debrief-1 = Das Rückschlagventil zur Pumpe ließ an seinem Sitz Luft zurück, wie ein Loch von einem Zehntelmillimeter. Die ruhende Pumpe lässt Luft bis an ihren Einlass, und von dort kroch sie in den Speicher: Am Morgen war nichts mehr da.
job-first-shift-hard-first-press-debrief-2 = Zehn Minuten Halten zeigen es schon, und auch die Ruhe zwischen zwei Läufen, die Minuten dauerte statt Stunden. Welches der beiden Ventile es ist, zeigt nur ein Trennen oder Abklemmen: den Schlauch der Pumpe abklemmen, und es hält; den des Motors abklemmen, und nichts ändert sich.
job-first-shift-hard-first-press-debrief-3 = Ein undichter Bremskraftverstärker oder Schlauch macht denselben Morgen. Das Abklemmen hätte daran nichts geändert.
job-first-shift-hard-first-press-debrief-4 = Der Wert über Nacht ist nur so gut wie die beiden Ablesungen und die Luft des Tages: Schon die Kälte der letzten Nacht bewegt das Manometer um einige kPa.

job-first-shift-new-in-the-mountains = Neu in den Bergen, die Pumpe läuft lange
job-first-shift-new-in-the-mountains-says-1 = Im Frühjahr sind wir hier heraufgezogen. Die Pumpe läuft und läuft, wenn ich einsteige und die Zündung einschalte: Unten an der Küste waren es sieben oder acht Sekunden, hier ist es das Doppelte.
job-first-shift-new-in-the-mountains-says-2 = Mein Schwager sagt, die Pumpe ist verschlissen und ich soll sie vor dem Winter wechseln lassen.
job-first-shift-new-in-the-mountains-says-3 = Die Bremsen selbst sind wie immer. Ich bin heute Morgen hier heraufgefahren.
job-first-shift-new-in-the-mountains-caution-1 = { -yard-pump }
job-first-shift-new-in-the-mountains-caution-2 = { -yard-hot }
job-first-shift-new-in-the-mountains-caution-3 = { -yard-assist }
job-first-shift-new-in-the-mountains-caution-4 = { -yard-battery }
job-first-shift-new-in-the-mountains-caution-5 = { -yard-exhaust }
job-first-shift-new-in-the-mountains-caution-6 = Die Straße zum Hof fällt ab: Unterlegkeile vor allem anderen.
job-first-shift-new-in-the-mountains-debrief-1 = Alles lag in seinen Grenzen. Auf 1 800 m ist die Luft draußen um ein Fünftel dünner; ein Unterdruck von 60 kPa ist ein viel größerer Anteil davon, und die Pumpe, die einen Anteil des Tagesdrucks erreicht und nicht eine Zahl in kPa, braucht dafür etwa doppelt so lange.
job-first-shift-new-in-the-mountains-debrief-2 = Das Datenblatt sagt es: 12 s auf Meereshöhe, 26 s auf 2 000 m. Dieselbe Pumpe zeigte an ihrem Endpunkt denselben Anteil des Tagesdrucks wie an der Küste. Zuerst das Barometer ablesen; jede Anzeige eines Manometers ist gegen die Luft des Tages.
job-first-shift-new-in-the-mountains-debrief-3 = Es ist nichts, das ist auch ein Befund und braucht Belege wie jeder andere: die Pumpe allein, die Ruhe zwischen den Läufen, das Halten, die Schaltpunkte, der Strom und die Spannungsabfälle.
job-first-shift-new-in-the-mountains-debrief-4 = Eine neue Pumpe hätte die Kundschaft etwa 400 gekostet und wäre genauso lange gelaufen.

job-first-shift-before-the-bread-round = Hartes Pedal vor der Brottour
job-first-shift-before-the-bread-round-says-1 = Ich fahre Brot aus, um halb vier fange ich an. Wenn ich einsteige und den Fuß auf die Bremse stelle, gibt sie keinen Fingerbreit nach: als stünde ich auf dem Bordstein.
job-first-shift-before-the-bread-round-says-2 = Sobald der Motor läuft, sinkt das Pedal, und dann bremst er wie immer, dreißig Halte bis um elf.
job-first-shift-before-the-bread-round-says-3 = Inzwischen macht er es auch nach meinem Mittagsschlaf. Die Werkstatt bei uns in der Straße sagt, morgens hart, das ist der Bremskraftverstärker, und will einen neuen einbauen. Bevor ich das bezahle, möchte ich es wissen.
job-first-shift-before-the-bread-round-caution-1 = Die Pumpe dreht mit dem Motor: Hände, Ärmel und Werkzeug weg von Riemen und Scheiben, Motor aus, bevor eine Verbindung an der Pumpe getrennt wird.
job-first-shift-before-the-bread-round-caution-2 = { -yard-assist }
job-first-shift-before-the-bread-round-caution-3 = Zwei Speicher: Das Pedal leert beide, aber vor dem Trennen einer Verbindung am Unterdruckspeicher erst auf ein Manometer sehen.
job-first-shift-before-the-bread-round-caution-4 = { -yard-battery }
job-first-shift-before-the-bread-round-caution-5 = { -yard-exhaust }
job-first-shift-before-the-bread-round-caution-6 = Vor wenigen Minuten hereingefahren: Motor und Abgasanlage sind heiß.
job-first-shift-before-the-bread-round-debrief-1 = Der Formschlauch zwischen dem Bremskraftverstärker und seinem Rückschlagventil hatte ein Loch von einem Zehntelmillimeter. Luft kroch in den Schlauch und von dort nach beiden Seiten: in den Bremskraftverstärker und durch sein Rückschlagventil in den Unterdruckspeicher. Ein Rückschlagventil hält, was hinter ihm liegt, nicht, was vor ihm hereinkommt. Nach einigen Stunden waren beide Speicher leer.
job-first-shift-before-the-bread-round-debrief-2 = Den Ausschlag gibt eine Ablesung mit dem am Bremskraftverstärker abgeklemmten Schlauch: In zehn Minuten verlor der Bremskraftverstärker für sich allein nichts, der Schlauch mit dem Unterdruckspeicher dahinter verlor 25 kPa (Grenzwert 3). Ohne Klemme waren beide Manometer nebeneinander gefallen, um je 13 kPa: Eine Undichtheit, die von beiden Enden gleich aussieht, sagt noch nicht, wo sie ist.
job-first-shift-before-the-bread-round-debrief-3 = Ein durchgerosteter Unterdruckspeicher oder ein Ventil, das an der Pumpe zurücklässt, leert über Nacht ebenfalls den Unterdruckspeicher. Dann behält aber der Bremskraftverstärker seinen Unterdruck hinter dem eigenen Rückschlagventil, und der erste Tritt ist noch unterstützt. Diese Beanstandung liegt an diesem Fahrzeug auf der Seite des Bremskraftverstärkers.
job-first-shift-before-the-bread-round-debrief-4 = Bei laufendem Motor zeigt sich nichts davon: Die Pumpe fördert weit mehr, als ein solches Loch hereinlässt, und zieht den Speicher so tief wie an einem heilen Fahrzeug. Ein neuer Bremskraftverstärker hätte 320 und fast zwei Stunden gekostet, und der alte Schlauch wäre wieder darangekommen.
