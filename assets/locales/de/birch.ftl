# Fahrzeug Birch: Teile, Baugruppen, Fehler, Ersatzteile, Grenzwerte, Protokoll.
birch-name = Birch, Dieselmotor, Unterdruckpumpe an der Nockenwelle und Unterdruckspeicher

birch-part-booster = Bremskraftverstärker mit Pedal und Hauptbremszylinder
birch-part-hose_b = Formschlauch vom Bremskraftverstärker zu seinem Rückschlagventil
birch-part-valve_b = Rückschlagventil des Bremskraftverstärkers
birch-part-hose_t = Schlauch vom Rückschlagventil zum Unterdruckspeicher
birch-part-tank = Unterdruckspeicher
birch-part-valve_p = Rückschlagventil an der Unterdruckpumpe
birch-part-hose_p = Schlauch vom Unterdruckspeicher zum Rückschlagventil der Pumpe
birch-part-pump = Unterdruckpumpe an der Nockenwelle
birch-part-engine = Dieselmotor mit Generator
birch-part-battery = Batterie
birch-part-strap = Masseband von Batterie-Minus zur Karosserie
birch-part-key = Zündschalter
birch-part-body = Karosserie

birch-cover-scuttle = Wasserkastenabdeckung über dem Bremskraftverstärker

birch-unit-booster = Bremskraftverstärker
birch-unit-hose_b = Schlauch Bremskraftverstärker–Rückschlagventil
birch-unit-valve_b = Rückschlagventil des Bremskraftverstärkers
birch-unit-hose_t = Schlauch Rückschlagventil–Unterdruckspeicher
birch-unit-tank = Unterdruckspeicher
birch-unit-valve_p = Rückschlagventil an der Pumpe
birch-unit-hose_p = Schlauch Unterdruckspeicher–Pumpe
birch-unit-pump = Unterdruckpumpe an der Nockenwelle
birch-unit-battery = Batterie
birch-unit-strap = Masseband der Batterie

birch-fault-pump_worn = Pumpe innen verschlissen: die Flügel lassen Luft zurück
birch-fault-pump_coupling = Kupplung der Pumpe verschlissen oder abgeschert
birch-fault-valve_p_leaks_back = Rückschlagventil an der Pumpe undicht in Sperrrichtung
birch-fault-valve_b_leaks_back = Rückschlagventil des Bremskraftverstärkers undicht in Sperrrichtung
birch-fault-valve_b_stuck_shut = Rückschlagventil des Bremskraftverstärkers klemmt geschlossen
birch-fault-hose_b_pinhole = Loch im Schlauch am Bremskraftverstärker
birch-fault-hose_b_bend = Schlauch am Bremskraftverstärker verhärtet: sein Bogen hat sich verzogen, ein Ende sitzt schief
birch-fault-hose_t_soft = Schlauch zum Unterdruckspeicher weich geworden: der Unterdruck zieht ihn zusammen
birch-fault-hose_p_sludge = Schlauch zur Pumpe innen mit Ölschlamm belegt
birch-fault-hose_p_kinked = Schlauch zur Pumpe geknickt
birch-fault-tank_rusted = Unterdruckspeicher durchgerostet
birch-fault-booster_rim = Membran des Bremskraftverstärkers am Rand undicht
birch-fault-booster_front_seal = vordere Dichtung des Bremskraftverstärkers an der Druckstange undicht
birch-fault-booster_tear = Membran des Bremskraftverstärkers zwischen den Kammern gerissen
birch-fault-booster_seat = Steuerventil des Bremskraftverstärkers undicht, nur bei betätigter Bremse
birch-fault-booster_air_seat = Steuerventil des Bremskraftverstärkers in Ruhe undicht
birch-fault-booster_filter = Luftfilter des Bremskraftverstärkers zugesetzt: die Unterstützung kommt spät
birch-fault-booster_sticks = Kolben des Bremskraftverstärkers klemmt: das Pedal kommt nicht zurück
birch-fault-booster_rod_short = Druckstange des Bremskraftverstärkers zu kurz eingestellt: langer Pedalweg
birch-fault-booster_rod_long = Druckstange des Bremskraftverstärkers zu lang eingestellt: die Bremsen schleifen

birch-spare-booster_new = Bremskraftverstärker, neu
birch-spare-hose_b_new = Schlauch Bremskraftverstärker–Rückschlagventil, neu
birch-spare-valve_b_new = Rückschlagventil des Bremskraftverstärkers, neu
birch-spare-hose_t_new = Schlauch Rückschlagventil–Unterdruckspeicher, neu
birch-spare-tank_new = Unterdruckspeicher, neu
birch-spare-valve_p_new = Rückschlagventil an der Pumpe, neu
birch-spare-hose_p_new = Schlauch Unterdruckspeicher–Pumpe, neu
birch-spare-pump_new = Unterdruckpumpe an der Nockenwelle, neu
birch-spare-battery_new = Batterie, neu
birch-spare-strap_new = Masseband der Batterie, neu

birch-limit-dead-head = Pumpe allein, Saugstutzen durch ein Manometer verschlossen, eine Minute bei warmem Leerlauf: Unterdruck mindestens 85 % des Tagesluftdrucks, also −86 kPa bei 101,3 kPa.
birch-limit-build-up = Warmer Leerlauf aus leerem Speicher bis −50 kPa Überdruck am Bremskraftverstärker, auf Meereshöhe: höchstens 12 s.
birch-limit-depth = Speicher nach zwei Minuten warmem Leerlauf: mindestens 79 % des Tagesluftdrucks, also −80 kPa bei 101,3 kPa.
birch-limit-hold-10-min = Bremskraftverstärkerseite seines Rückschlagventils, Motor aus, eine Minute nach dem Beruhigen: Verlust höchstens 3 kPa in 10 Minuten.
birch-limit-hold-tank = Unterdruckspeicher, Motor aus, eine Minute nach dem Beruhigen: Verlust höchstens 3 kPa in 10 Minuten.
birch-limit-check-valve = Rückschlagventil, Quelle abgezogen und zur Luft offen, Speicher evakuiert: der Speicher verliert höchstens 3 kPa in 10 Minuten.
birch-limit-line-difference = Zwei Manometer, am Unterdruckspeicher und am Bremskraftverstärker, warmer Leerlauf aus leerem Speicher: bei −50 kPa am Bremskraftverstärker höchstens 8 kPa Unterschied.
birch-limit-hold-applied = Pedal mit 60 N gehalten, Motor aus: der Bremskraftverstärker verliert höchstens 3 kPa in 30 s.
birch-limit-reserve = Unterstützte Betätigungen bei stehendem Motor, aus vollem Speicher: mindestens zwei.
birch-limit-pedal-follows = Pedal rasch mit 60 N getreten, Speicher voll: nach höchstens 1 s ist es bis auf 1 mm dahin gesunken, wo es stehen bleibt.
birch-limit-pedal-returns = Pedal aus 80 N losgelassen, Speicher voll: es kommt bis auf 2 mm in seine Ruhelage zurück.
birch-limit-free-travel = Pedalweg, bevor die Bremsen antworten: 3 bis 9 mm.
birch-limit-bend = Bogen des Schlauchs am Bremskraftverstärker: 90 Grad, 5 in jede Richtung.
birch-limit-battery = Batterie, Zündung aus, eine Viertelstunde in Ruhe: 12,2 bis 12,9 V.

birch-record-day = Tagesluftdruck, vom Barometer
birch-record-battery = Batteriespannung an den Polen, Zündung aus
birch-record-drop = Freigabe: bei abgebautem Unterdruck gehaltenes Pedal sinkt beim Starten des Motors
birch-record-reserve = Freigabe: unterstützte Betätigungen bei stehendem Motor, mindestens zwei
birch-record-no-rise = Freigabe: 30 s nach dem Abstellen gehaltenes Pedal steigt nicht
birch-record-yard = Freigabe: langsame Bremsprobe auf dem Hof

birch-caution-1 = Ohne Unterdruck ist das Pedal hart und das Fahrzeug bremst kaum: zuerst Unterlegkeile anlegen, und nie ein Fahrzeug bewegen oder zurückgeben, dessen Unterstützung nicht nachgewiesen ist.
birch-caution-2 = Die Pumpe dreht mit dem Motor: Hände, Ärmel und Werkzeug weg von Riemen und Scheiben, Motor aus, bevor eine Verbindung an der Pumpe getrennt wird.
birch-caution-3 = Vor dem Trennen einer Unterdruckverbindung das Pedal treten, bis der Speicher leer ist; der Unterdruckspeicher behält seinen eigenen Unterdruck.
birch-caution-4 = Abgase in geschlossenen Räumen töten: Abgasabsaugung anschließen und einschalten, bevor der Motor läuft.
birch-caution-5 = Batterie: Minuspol zuerst abklemmen und zuletzt anklemmen; nie die Pole kurzschließen.
