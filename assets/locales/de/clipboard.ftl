clipboard-open = Klemmbrett nehmen (Taste C)
clipboard-fold = Klemmbrett weglegen (Taste C)
leaf-card = Auftrag
leaf-sheet = Daten
leaf-notebook = Notizen
leaf-suspicions = Verdacht
leaf-finding = Befund

card-customer = Angaben des Kunden
card-quote = „{ $text }“
card-cautions = Vorsicht
card-defer = Angaben des Fahrzeugherstellers, örtliche Vorschriften und anerkannte Regeln der Technik gehen allem vor, was dieses Programm sagt. Es ist eine Übung, keine Reparaturanleitung.
card-read = Als gelesen bestätigen
card-was-read = gelesen um { $time }

sheet-title = Datenblatt
sheet-on-desk = Das Datenblatt des Fahrzeugs liegt auf dem Schreibtisch. Einmal geholt, bleibt es am Klemmbrett.
sheet-read = Holen und lesen
sheet-was-read = gelesen um { $time }
sheet-altitude = Oberhalb von { $m } m erreicht die Pumpe ihren Ausschaltpunkt unter Umständen nicht.
sheet-day = Grenzwerte am Manometer gelten für 101,3 kPa am Barometer; an anderen Tagen verringern sich die der Pumpe mit dem Tagesluftdruck.
sheet-cautions = Vorsicht
sheet-between = umgerechnet: { $min } bis { $max }
sheet-least = umgerechnet: mindestens { $min }
sheet-deeper = umgerechnet: { $max } oder tiefer
sheet-most = umgerechnet: höchstens { $max }

notebook-open = Angesehen, nicht notiert
notebook-none-open = Nichts wartet auf eine Notiz.
notebook-open-why = Nur Notiertes zählt. Den abgelesenen Wert selbst aufschreiben.
notebook-draft = angefangen: { $text }
notebook-strike-short = Streichen
notebook-strike = Ablesung { $n } streichen
notebook-unstrike-short = Zurück
notebook-unstrike = Streichung von Ablesung { $n } zurücknehmen
notebook-strike-why = Sie wartet dann auf keine Notiz mehr. Der Versuch behält sie, und es lässt sich zurücknehmen.
notebook-notes = Notiert
notebook-no-notes = Noch nichts notiert.
notebook-no-number = ohne Zahl
notebook-reading = { $n } · { $time } · { $what }
notebook-note-number = Ablesung { $n } notieren …
notebook-note-sense = Ablesung { $n } notieren
notebook-anew = Ablesung { $n } neu schreiben …
notebook-anew-why = Ein Schreibfehler wird durchgestrichen; der Versuch behält beides.
notebook-struck-out = durchgestrichen
notebook-for = für: { $line }

note-held = Wie abgelesen um { $time }. Die Zeit steht, bis der Wert aufgeschrieben ist oder das Feld verlassen wird.
note-what = Abgelesener Wert mit Einheit
note-hint = etwa −58 kPa
note-for = Für das Protokoll
note-line = Protokollzeile zu Ablesung { $n }
note-no-line = keine Zeile
note-do = Aufschreiben
note-no-number = Das ist keine Zahl: Ziffern eingeben, mit Vorzeichen, wenn es eines gibt.
note-no-unit = Eine Zahl ohne Einheit sagt nichts: eine auswählen oder hinter die Zahl schreiben.

record-title = Prüfprotokoll des Fahrzeugs
record-day = Gleich bei jedem Auftrag
record-release = Freigabeprüfungen, nach der letzten Änderung
record-filled = { $line }: ausgefüllt
record-open = { $line }: offen
record-not-met = { $line }: notiert, aber: { $why }

suspicion-prompt = Vermutung und Grund. Wird nicht bewertet; hilft beim Nachdenken.
suspicion-do = Aufschreiben

finding-given = Befund { $n }
finding-first = Der erste Befund wird gesperrt und ist vor der ersten Reparatur abzugeben: das bis dahin Notierte ist sein Nachweis. Ein späterer zählt halb.
finding-second = Ein Befund liegt vor, oder es wurde bereits repariert: dieser zählt halb.
finding-units = Außerhalb der Grenzwerte
finding-sound = Alles innerhalb der Grenzwerte
finding-certainty = Wie sicher
finding-sure = zu { $percent } sicher
finding-fixed = Das legt die Schule fest: jeder Befund zählt als zu { $percent } sicher.
finding-unknown = Nicht gefunden: Fahrzeug bleibt, weiterverweisen
finding-do = Diesen Befund abgeben …
finding-no-certainty = Angeben, wie sicher der Befund ist.
finding-no-unit = Ankreuzen, was außerhalb liegt, oder dass alles innerhalb liegt.
finding-kept = Die Häkchen bleiben stehen; so zählen sie nicht.
finding-said = { $units }. Zu { $percent } % sicher.
finding-said-sound = Alles innerhalb der Grenzwerte. Zu { $percent } % sicher.
finding-said-unknown = Nicht gefunden; das Fahrzeug bleibt und wird weiterverwiesen.
finding-confirm = Diesen Befund eintragen?
finding-confirm-first = Er ist dann gesperrt. Später Notiertes zählt nur noch für die Freigabe.
finding-confirm-second = Er zählt halb; der erste bleibt bestehen.
finding-confirm-do = Ja, das ist der Befund
finding-confirm-not = Noch nicht

hints-heading = Was würde jetzt am meisten verraten?
hints-ask = Fragen ({ $points } Punkte Abzug; noch { $left })
hints-counted = Berechnet aus dem, was Sie notiert haben; was verborgen ist, geht nicht ein. Jedes Mal wird gezählt.
hints-coming = Wird berechnet. Arbeiten Sie weiter; gezählt wird, wenn der Hinweis da ist.
hints-stands = Das gilt, bis etwas Weiteres notiert ist.
hints-test = Am meisten für ihre Minuten: { $test }.
hints-enough = Ihre Notizen sagen genug: geben Sie den Befund ab.
hints-nothing = Keine Prüfung, die hier möglich ist, lohnt ihre Minuten.

leave-title = Auftrag verlassen?
leave-kept = Alles bisher Getane ist gespeichert. Der Auftrag lässt sich am Empfang fortsetzen.
leave-rehearsal = Dies ist eine Probe: davon bleibt nichts.
leave-lost = Eine halb geschriebene Notiz, Vermutung oder ein halber Befund bleibt nicht erhalten.
leave-do = Auftrag jetzt verlassen
leave-not = Bleiben

back-title = Fahrzeug übergeben?
back-complete = Auf dem Papier fehlt nichts.
back-missing = Auf dem Papier fehlt noch:
back-no-finding = Kein Befund abgegeben; ohne Befund kann das Fahrzeug nicht zurück.
back-not-noted = { $n ->
    [one] Eine Ablesung wurde angesehen, aber nicht notiert.
   *[other] { $n } Ablesungen wurden angesehen, aber nicht notiert.
}
back-record = Im Protokoll offen: { $lines }.
back-release = Freigabeprüfungen offen: { $lines }.
back-caution = Bremsen
back-caution-text = Kein Fahrzeug freigeben, dessen Bremskraftunterstützung nicht nachgewiesen ist. Das Fahrzeug absehen: Abdeckungen, Stopfen, Klemmen, Messgeräte, Keile, Absaugung. Danach ist der Versuch beendet.
back-do = Übergeben
back-not = Noch nicht
