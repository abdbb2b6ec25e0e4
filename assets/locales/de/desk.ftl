desk-title = pinhole
desk-what = Eine Lernwerkstatt für die Fehlersuche am Unterdrucksystem des Bremskraftverstärkers: messen, notieren, entscheiden, instand setzen, nachweisen.
desk-leave = Programm verlassen
desk-trouble = Das hat nicht geklappt
desk-caution = Vor der Anwendung am Fahrzeug
desk-caution-1 = Angaben des Fahrzeugherstellers, örtliche Vorschriften und anerkannte Regeln der Technik gehen vor. Dies ist eine Übung, keine Reparaturanleitung.
desk-caution-2 = Arbeiten an Bremsen können Menschen gefährden. Nur durch dafür ausgebildetes Personal oder unter dessen Aufsicht ausführen.
desk-carry-on = Nicht abgeschlossene Versuche
desk-carry-on-this = Fortsetzen: { $job }
desk-attempt = Versuch { $n }
desk-actions = { $n ->
    [0] noch nichts getan
    [one] bisher eine Handlung
   *[other] bisher { $n } Handlungen
}
desk-minutes = { $minutes ->
    [one] Zeitvorgabe: eine Minute
   *[other] Zeitvorgabe: { $minutes } Minuten
}
desk-pack-broken = Dieses Paket kann nicht verwendet werden
desk-begin = Beginnen
desk-go-on = Fortsetzen
