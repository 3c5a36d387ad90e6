"""German: what can hurt, and what handbooks add. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

CAUTIONS: Catalogue = {
    (
        "Wet concrete and mortar burn skin, slowly and without hurting at first: gloves, boots, eyes covered, water by."
    ): (
        "Nasser Beton und Mörtel verätzen die Haut, langsam und anfangs ohne Schmerz: Handschuhe, Stiefel, "
        "Augenschutz, Wasser in Reichweite."
    ),
    ("Dust of cut concrete, stone and block harms the lungs for good: cut wet, and wear a mask that is made for it."): (
        "Staub von geschnittenem Beton, Stein und Mauerstein schadet der Lunge für immer: nass schneiden und "
        "eine Maske tragen, die dafür gemacht ist."
    ),
    "The walls of a trench can fall in without a sign. Ask before you dig where pipes and cables lie.": (
        "Die Wände eines Grabens können ohne Vorwarnung einstürzen. Frag vor dem Graben, wo Rohre und Kabel liegen."
    ),
    ("Old paint may hold lead, old boards and sheets asbestos: have them looked at before you sand or break them."): (
        "Alte Farbe kann Blei enthalten, alte Platten Asbest: lass sie prüfen, bevor du sie schleifst oder brichst."
    ),
    "Glass near a door, near the floor or in a large pane has to be safety glass in most places.": (
        "Glas an einer Tür, nahe am Boden oder in einer großen Scheibe muss fast überall Sicherheitsglas sein."
    ),
    "Treated timber is never burnt. Its dust is not breathed.": (
        "Behandeltes Holz wird nie verbrannt. Sein Staub wird nicht eingeatmet."
    ),
    "Electricity: what goes into the ground or a wall is a licensed electrician's work.": (
        "Strom: was in den Boden oder in eine Wand kommt, ist Arbeit einer zugelassenen Elektrofachkraft."
    ),
    "Working at height: a ladder that cannot slip, somebody on the ground, and nobody up there in wind.": (
        "Arbeiten in der Höhe: eine Leiter, die nicht rutschen kann, jemand am Boden und bei Wind niemand oben."
    ),
    (
        "A take-off is for buying materials; it is not a design. Ask the building office what the local code and "
        "permits demand, and a licensed professional for anything that carries a load."
    ): (
        "Eine Mengenermittlung dient dem Einkauf; sie ist kein Entwurf. Frag das Bauamt, was Vorschriften und "
        "Genehmigungen am Ort verlangen, und eine zugelassene Fachkraft bei allem, was trägt."
    ),
    (
        "Footings, walls, reinforcement, posts, openings and roofs carry loads from snow, wind, frost and "
        "earthquakes. Their sizes are for a licensed engineer and the local code; this only counts what they "
        "take."
    ): (
        "Fundamente, Wände, Bewehrung, Pfosten, Öffnungen und Dächer tragen Lasten aus Schnee, Wind, Frost und "
        "Erdbeben. Ihre Maße bestimmen eine zugelassene Fachkraft für Statik und die Vorschriften am Ort; hier "
        "wird nur gezählt, was sie brauchen."
    ),
    (
        "Wet concrete and mortar burn. They are strongly alkaline (pH 12 to 13, skin is 4 to 5.5), and a burn "
        "can grow for hours before it hurts. Wear waterproof gloves, boots and eye protection, wash splashes off "
        "at once and change wet clothes; see a doctor about any burn."
    ): (
        "Nasser Beton und Mörtel verätzen. Sie sind stark alkalisch (pH 12 bis 13, Haut hat 4 bis 5,5), und eine "
        "Verätzung kann stundenlang wachsen, bevor sie wehtut. Trag wasserdichte Handschuhe, Stiefel und "
        "Augenschutz, wasch Spritzer sofort ab und wechsle nasse Kleidung; geh mit jeder Verätzung zum Arzt."
    ),
    (
        "Cutting, drilling and grinding concrete, block, brick or stone, and tipping dry mix, makes silica dust "
        "that scars the lungs. Cut wet and outdoors and wear a fitted respirator. The limit at work is 50 "
        "micrograms in a cubic metre of air over 8 hours."
    ): (
        "Beim Schneiden, Bohren und Schleifen von Beton, Mauersteinen, Ziegeln oder Naturstein und beim Schütten "
        "von Trockenmischung entsteht Quarzstaub, der die Lunge vernarbt. Schneide nass und im Freien und trag "
        "eine angepasste Atemschutzmaske. Die Grenze bei der Arbeit sind 50 Mikrogramm je Kubikmeter Luft über 8 "
        "Stunden."
    ),
    (
        "Concrete needs protection from the cold as soon as the air has been, or may be, below 40 F (5 C) while "
        "it cures. Never pour on frozen ground."
    ): (
        "Beton braucht Schutz vor Kälte, sobald die Luft beim Erhärten unter 5 °C (40 °F) lag oder liegen kann. "
        "Betoniere nie auf gefrorenem Boden."
    ),
    (
        "Concrete goes on hardening for weeks: a guide specification has it kept moist for 7 to 21 days, by the "
        "cement used. Follow the bag, and ask before loading it early."
    ): (
        "Beton härtet wochenlang weiter: eine Musterspezifikation lässt ihn je nach Zement 7 bis 21 Tage feucht "
        "halten. Folge der Angabe auf dem Sack und frag, bevor du ihn früh belastest."
    ),
    (
        "Footings go below the frost line, or are protected from frost, and 12 in or more into undisturbed "
        "ground. The frost line is set by the local code: ask for it before digging."
    ): (
        "Fundamente reichen unter die Frostgrenze oder sind vor Frost geschützt, und mindestens 12 in (30 cm) in "
        "gewachsenen Boden. Die Frosttiefe legen die Vorschriften am Ort fest: frag danach, bevor du gräbst."
    ),
    (
        "How wide and thick a footing has to be depends on the soil and the building, and the local code sets "
        "it: one edition asks for 6 in thick at least, and for 2 in or more beyond the wall on each side, but no "
        "more than the footing is thick."
    ): (
        "Wie breit und dick ein Fundament sein muss, hängt von Boden und Gebäude ab, und die Vorschriften am Ort "
        "legen es fest: eine Fassung verlangt mindestens 6 in (15 cm) Dicke und 2 in (5 cm) oder mehr Überstand "
        "auf jeder Seite der Wand, aber nicht mehr, als das Fundament dick ist."
    ),
    (
        "Before any digging, also for a post, have the buried cables and pipes marked: in the United States call "
        "or file with 811 some business days ahead, elsewhere the local service. Wait for every owner's answer "
        "and dig by hand near the marks."
    ): (
        "Lass vor jedem Graben, auch für einen Pfosten, verlegte Kabel und Rohre markieren: in den Vereinigten "
        "Staaten einige Werktage vorher über 811, anderswo bei der Stelle am Ort. Warte auf die Antwort jedes "
        "Betreibers und grab nahe den Markierungen von Hand."
    ),
    (
        "Trench and pit walls fall in without warning and bury people. Slope them back or shore them, keep the "
        "spoil away from the edge and never work in one alone. At work they are protected from 5 ft deep on; "
        "shallower ones have killed too."
    ): (
        "Wände von Gräben und Gruben stürzen ohne Warnung ein und verschütten Menschen. Böschen oder verbauen, "
        "den Aushub vom Rand fernhalten und nie allein darin arbeiten. Im Beruf werden sie ab 5 ft (1,5 m) Tiefe "
        "gesichert; auch flachere haben getötet."
    ),
    (
        "For pits less than 20 ft deep the steepest slopes are 3/4 out for 1 down in the firmest soil, 1 for 1 "
        "in the middling, 1 1/2 for 1 in the loosest. What soil yours is, a competent person has to say."
    ): (
        "Bei Gruben unter 20 ft (6 m) Tiefe sind die steilsten Böschungen 3/4 nach außen auf 1 nach unten im "
        "festesten Boden, 1 auf 1 im mittleren, 1 1/2 auf 1 im lockersten. Welcher Boden deiner ist, muss eine "
        "sachkundige Person sagen."
    ),
    (
        "Paint from before 1978 may hold lead, on salvaged windows, doors and boards too. Do not dry-sand, burn "
        "or torch it; have it tested, and keep children away from the dust."
    ): (
        "Farbe von vor 1978 kann Blei enthalten, auch auf geborgenen Fenstern, Türen und Brettern. Schleif sie "
        "nicht trocken, brenn sie nicht ab; lass sie prüfen und halte Kinder vom Staub fern."
    ),
    (
        "Insulation, surfacing and vinyl or asphalt flooring from buildings up to 1980 is taken to hold asbestos "
        "until tested; putty and sealant of old windows may too. Leave it alone and ask a licensed firm."
    ): (
        "Dämmung, Beschichtungen und Vinyl- oder Asphaltböden aus Gebäuden bis 1980 gelten als asbesthaltig, bis "
        "sie geprüft sind; auch Kitt und Dichtmasse alter Fenster können es sein. Lass die Finger davon und frag "
        "eine zugelassene Firma."
    ),
    (
        "Old glass is seldom safety glass. One code asks for it where a pane is over 9 ft2 with its bottom under "
        "18 in, its top over 36 in and a walkway within 36 in; and beside doors, within 24 in of them and under "
        "60 in from the floor. Local code decides."
    ): (
        "Altes Glas ist selten Sicherheitsglas. Eine Vorschrift verlangt es, wo eine Scheibe größer als 9 ft² "
        "(0,84 m²) ist, ihre Unterkante unter 18 in (46 cm), ihre Oberkante über 36 in (91 cm) liegt und ein "
        "Gehweg höchstens 36 in (91 cm) entfernt ist; und neben Türen, bis 24 in (61 cm) Abstand und unter 60 in "
        "(152 cm) über dem Boden. Es entscheiden die Vorschriften am Ort."
    ),
    (
        "Treated timber, old treated timber above all, may hold arsenic. Never burn, compost or mulch it or its "
        "sawdust; wear a mask and gloves when sawing."
    ): (
        "Behandeltes Holz, vor allem altes, kann Arsen enthalten. Verbrenne, kompostiere oder mulche es und sein "
        "Sägemehl nie; trag beim Sägen Maske und Handschuhe."
    ),
    ("Falls from roofs and ladders kill. Use a scaffold or a tied ladder and a harness, and do not work in wind."): (
        "Stürze von Dächern und Leitern töten. Nimm ein Gerüst oder eine angebundene Leiter und einen Gurt, und "
        "arbeite nicht bei Wind."
    ),
    (
        "The plumbing code sets the least slope of a drain: one has 1/4 in per ft for pipes up to 2 1/2 in, 1/8 "
        "in from 3 to 6 in and 1/16 in from 8 in on. Ask for yours before laying."
    ): (
        "Die Installationsvorschrift legt das Mindestgefälle fest: eine nennt 1/4 in je ft (2,1 %) für Rohre bis "
        "2 1/2 in, 1/8 in (1 %) von 3 bis 6 in und 1/16 in (0,5 %) ab 8 in. Frag nach deiner, bevor du verlegst."
    ),
    ("Rain off a roof is not drinking water unless it is treated and tested, and some places limit collecting it."): (
        "Regen vom Dach ist kein Trinkwasser, solange er nicht aufbereitet und geprüft ist, und mancherorts ist "
        "das Sammeln beschränkt."
    ),
    (
        "Paints and solvents give off fumes and burn easily; oily rags can catch fire by themselves. Air the room well."
    ): (
        "Farben und Lösemittel dünsten aus und brennen leicht; ölige Lappen können sich selbst entzünden. Lüfte "
        "den Raum gut."
    ),
    "5% for footings, columns and beams": "5 % für Fundamente, Stützen und Balken",
    "8% for slabs": "8 % für Platten",
    "10% for the foundation and slab of a small building": "10 % für Fundament und Platte eines kleinen Gebäudes",
    "10% for ends and bad wood": "10 % für Enden und schlechtes Holz",
    "10% for laps and waste, where laps are not counted": ("10 % für Stöße und Verlust, wo Stöße nicht gezählt werden"),
    "5% for breakage": "5 % für Bruch",
    "5% for breakage, an old rule for brick; the newer handbook asks for some and names none": (
        "5 % für Bruch, eine alte Regel für Ziegel; das neuere Handbuch verlangt etwas und nennt keine Zahl"
    ),
    "5% to 8% for shingles": "5 % bis 8 % für Schindeln",
}
