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
