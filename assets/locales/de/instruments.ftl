# Messgeräte und Hilfsmittel.
instrument-angle = Winkelmesser
instrument-barometer = Barometer an der Wand
instrument-button = Tasterleitung mit Sicherung
instrument-clampmeter = Stromzange
instrument-clamps = Schlauchklemmen für Gummischlauch
instrument-gauge = Unterdruckmanometer mit T-Anschluss
instrument-gauge_b = zweites Unterdruckmanometer mit T-Anschluss
instrument-handpump = Handunterdruckpumpe mit Manometer
instrument-infrared = Infrarotthermometer
instrument-lamp = Prüflampe 21 W mit zwei Leitungen
instrument-meter = Multimeter
instrument-plugs = Satz Gummistopfen
instrument-prop = Pedalstütze
instrument-rule = Maßstab für den Pedalweg
instrument-thermometer = Thermometer an der Wand
instrument-tube = Horchschlauch
instrument-watch = Stoppuhr
