# Messgeräte und Hilfsmittel.
instrument-angle = Winkelmesser
instrument-barometer = Barometer an der Wand
instrument-button = Prüfleitung mit Sicherung und Taster
instrument-clampmeter = Stromzange
instrument-clamps = Abklemmzangen für Gummischlauch
instrument-gauge = Manometer mit T-Stück
instrument-gauge_b = Zweitmanometer mit T-Stück
instrument-handpump = Handunterdruckpumpe mit Manometer
instrument-infrared = Infrarotthermometer
instrument-lamp = Prüflampe 21 W mit zwei Leitungen
instrument-meter = Multimeter
instrument-plugs = Satz Gummistopfen
instrument-prop = Pedalstütze
instrument-rule = Messlineal für den Pedalweg
instrument-thermometer = Thermometer an der Wand
instrument-tube = Abhörschlauch
instrument-watch = Stoppuhr

# Wozu sie da sind und was sie nicht können.
instrument-angle-help = An einen Formschlauch gelegt, zeigt er den Winkel des Bogens; ob das Ende dichtet, sieht er nicht.
instrument-barometer-help = Zeigt den absoluten Luftdruck des Tages; jedes Manometer misst gegen ihn.
instrument-button-help = Speist die Pumpe oder überbrückt einen Kontakt, solange der Taster gedrückt ist; klären Sie vorher, was am anderen Ende liegt.
instrument-clampmeter-help = Misst Gleichstrom um eine Leitung herum, ohne sie zu öffnen; unter einem halben Ampere zeigt sie kaum mehr als ihren Nullfehler.
instrument-clamps-help = Drücken einen Gummischlauch zu, ohne ihn zu öffnen; nie auf hartes Rohr setzen, es bricht.
instrument-gauge-help = Sitzt an einer Verbindung oder verschließt einen offenen Luftanschluss und zeigt kPa gegen die Luft des Tages; es bringt 12 cm³ eigenes Volumen mit und sagt nichts über den Durchfluss.
instrument-gauge_b-help = Wie das erste, für zwei Stellen zugleich; es hat seinen eigenen Fehler, also beide erst an einem Punkt vergleichen.
instrument-handpump-help = Saugt je Hub etwa 20 cm³ aus einem Teil und zeigt, ob es hält; ein Bremskraftverstärker braucht viele Hübe, und ein langsames Leck sieht die grobe Skala nicht.
instrument-infrared-help = Zeigt die Temperatur einer matten Oberfläche; auf blankem Metall zeigt es viel zu wenig.
instrument-lamp-help = Zeigt, ob ein Weg fast zwei Ampere trägt, was ein Ohmmeter nicht kann; ihr Glimmen ist kein Voltmeter.
instrument-meter-help = Misst Volt an zwei Punkten, Ohm nur stromlos, Ampere über eine 10-A-Sicherung, die der Anlauf der Pumpe schmilzt; Ohm ohne Last sagen wenig über einen Kontakt.
instrument-plugs-help = Verschließen offene Luftanschlüsse und teilen so den Kreis; ein vergessener Stopfen ist selbst ein Fehler, also zählen.
instrument-prop-help = Hält das Pedal mit fester Kraft, damit Hände und Augen frei sind; vor dem Fahren herausnehmen.
instrument-rule-help = Misst, wie weit das Pedal aus der Ruhelage steht, in mm; wer zwei Werte vergleicht, braucht zweimal dieselbe Fußkraft.
instrument-thermometer-help = Zeigt die Lufttemperatur in der Werkstatt, nicht die eines Teils.
instrument-tube-help = Führt das Ohr an ein Teil; ein Zischen sagt, wo Luft eintritt, nicht wie viel.
instrument-watch-help = Misst, wie lange die Pumpe läuft oder ruht, auf eine Zehntelsekunde und auf Ihre Reaktion genau.
