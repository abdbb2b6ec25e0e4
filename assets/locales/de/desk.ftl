desk-title = pinhole
desk-what = Eine Werkstatt zum Lernen, wie Fehler im Unterdrucksystem des Bremskraftverstärkers gefunden werden: messen, notieren, entscheiden, instand setzen, nachweisen.
desk-leave = Programm verlassen
desk-trouble = Das hat nicht geklappt
desk-caution = Bevor etwas davon an einem Fahrzeug angewendet wird
desk-caution-1 = Angaben des Fahrzeugherstellers, örtliche Vorschriften und zugelassene Fachpraxis gehen vor. Dies ist eine Übung, keine Reparaturanleitung.
desk-caution-2 = Arbeiten an Bremsen können Menschen gefährden. Nur mit Ausbildung dafür ausführen oder unter Aufsicht einer ausgebildeten Person.
desk-carry-on = Nicht abgeschlossene Versuche
desk-carry-on-this = Fortsetzen: { $job }
desk-attempt = Versuch { $n }
desk-actions = { $n ->
    [0] noch nichts getan
    [one] bisher eine Handlung
   *[other] bisher { $n } Handlungen
}
desk-minutes = { $minutes } Minuten Arbeitszeit
desk-pack-broken = Dieses Paket kann nicht verwendet werden
