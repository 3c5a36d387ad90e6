"""Spanish: what can hurt, and what handbooks add. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

CAUTIONS: Catalogue = {
    (
        "Wet concrete and mortar burn skin, slowly and without hurting at first: gloves, boots, eyes covered, water by."
    ): (
        "El hormigón y el mortero frescos queman la piel, despacio y al principio sin dolor: guantes, botas, "
        "ojos protegidos, agua a mano."
    ),
    ("Dust of cut concrete, stone and block harms the lungs for good: cut wet, and wear a mask that is made for it."): (
        "El polvo de cortar hormigón, piedra y bloque daña los pulmones para siempre: corta en húmedo y lleva "
        "una mascarilla hecha para eso."
    ),
    "The walls of a trench can fall in without a sign. Ask before you dig where pipes and cables lie.": (
        "Las paredes de una zanja pueden caerse sin avisar. Pregunta antes de cavar por dónde van tubos y cables."
    ),
    ("Old paint may hold lead, old boards and sheets asbestos: have them looked at before you sand or break them."): (
        "La pintura vieja puede tener plomo, y las placas viejas amianto: haz que las miren antes de lijarlas o "
        "romperlas."
    ),
    "Glass near a door, near the floor or in a large pane has to be safety glass in most places.": (
        "El vidrio junto a una puerta, cerca del suelo o en un paño grande debe ser de seguridad en casi todas partes."
    ),
    "Treated timber is never burnt. Its dust is not breathed.": (
        "La madera tratada no se quema nunca. Su polvo no se respira."
    ),
    "Electricity: what goes into the ground or a wall is a licensed electrician's work.": (
        "Electricidad: lo que va bajo tierra o dentro de una pared es trabajo de un electricista autorizado."
    ),
    "Working at height: a ladder that cannot slip, somebody on the ground, and nobody up there in wind.": (
        "Trabajo en altura: una escalera que no pueda resbalar, alguien en el suelo y nadie arriba con viento."
    ),
    (
        "A take-off is for buying materials; it is not a design. Ask the building office what the local code and "
        "permits demand, and a licensed professional for anything that carries a load."
    ): (
        "Una medición sirve para comprar materiales; no es un proyecto. Pregunta en urbanismo qué piden las "
        "normas y permisos locales, y a un profesional titulado por todo lo que soporte carga."
    ),
    (
        "Footings, walls, reinforcement, posts, openings and roofs carry loads from snow, wind, frost and "
        "earthquakes. Their sizes are for a licensed engineer and the local code; this only counts what they "
        "take."
    ): (
        "Zapatas, muros, armado, postes, huecos y tejados soportan cargas de nieve, viento, helada y terremotos. "
        "Sus medidas las fijan un técnico titulado y las normas locales; aquí solo se cuenta lo que llevan."
    ),
    (
        "Wet concrete and mortar burn. They are strongly alkaline (pH 12 to 13, skin is 4 to 5.5), and a burn "
        "can grow for hours before it hurts. Wear waterproof gloves, boots and eye protection, wash splashes off "
        "at once and change wet clothes; see a doctor about any burn."
    ): (
        "El hormigón y el mortero frescos queman. Son muy alcalinos (pH de 12 a 13; la piel, de 4 a 5,5), y una "
        "quemadura puede crecer durante horas antes de doler. Lleva guantes impermeables, botas y protección "
        "ocular, lava las salpicaduras enseguida y cámbiate la ropa mojada; ve al médico por cualquier quemadura."
    ),
    (
        "Cutting, drilling and grinding concrete, block, brick or stone, and tipping dry mix, makes silica dust "
        "that scars the lungs. Cut wet and outdoors and wear a fitted respirator. The limit at work is 50 "
        "micrograms in a cubic metre of air over 8 hours."
    ): (
        "Cortar, taladrar y amolar hormigón, bloque, ladrillo o piedra, y verter mezcla seca, levanta polvo de "
        "sílice que deja cicatrices en los pulmones. Corta en húmedo y al aire libre, con una mascarilla "
        "ajustada. El límite en el trabajo es de 50 microgramos por metro cúbico de aire en 8 horas."
    ),
    (
        "Concrete needs protection from the cold as soon as the air has been, or may be, below 40 F (5 C) while "
        "it cures. Never pour on frozen ground."
    ): (
        "El hormigón necesita protección del frío en cuanto el aire haya bajado, o pueda bajar, de 5 °C (40 °F) "
        "mientras fragua. No hormigones nunca sobre suelo helado."
    ),
    (
        "Concrete goes on hardening for weeks: a guide specification has it kept moist for 7 to 21 days, by the "
        "cement used. Follow the bag, and ask before loading it early."
    ): (
        "El hormigón sigue endureciendo durante semanas: un pliego tipo lo mantiene húmedo de 7 a 21 días, según "
        "el cemento. Haz caso al saco y pregunta antes de cargarlo pronto."
    ),
    (
        "Footings go below the frost line, or are protected from frost, and 12 in or more into undisturbed "
        "ground. The frost line is set by the local code: ask for it before digging."
    ): (
        "Las zapatas bajan de la línea de helada, o se protegen de ella, y al menos 12 in (30 cm) en terreno sin "
        "remover. La profundidad de helada la fijan las normas locales: pregúntala antes de cavar."
    ),
    (
        "How wide and thick a footing has to be depends on the soil and the building, and the local code sets "
        "it: one edition asks for 6 in thick at least, and for 2 in or more beyond the wall on each side, but no "
        "more than the footing is thick."
    ): (
        "Lo ancha y gruesa que debe ser una zapata depende del suelo y del edificio, y lo fijan las normas "
        "locales: una edición pide al menos 6 in (15 cm) de grosor y 2 in (5 cm) o más a cada lado del muro, "
        "pero no más que el grosor de la zapata."
    ),
    (
        "Before any digging, also for a post, have the buried cables and pipes marked: in the United States call "
        "or file with 811 some business days ahead, elsewhere the local service. Wait for every owner's answer "
        "and dig by hand near the marks."
    ): (
        "Antes de cavar, aunque sea para un poste, haz que marquen los cables y tubos enterrados: en Estados "
        "Unidos, por el 811 unos días laborables antes; en otros sitios, por el servicio local. Espera la "
        "respuesta de cada titular y cava a mano cerca de las marcas."
    ),
    (
        "Trench and pit walls fall in without warning and bury people. Slope them back or shore them, keep the "
        "spoil away from the edge and never work in one alone. At work they are protected from 5 ft deep on; "
        "shallower ones have killed too."
    ): (
        "Las paredes de zanjas y fosos se caen sin avisar y sepultan. Dales talud o entíbalas, aparta la tierra "
        "del borde y no trabajes nunca solo dentro. En el trabajo se protegen desde 5 ft (1,5 m) de profundidad; "
        "otras menos hondas también han matado."
    ),
    (
        "For pits less than 20 ft deep the steepest slopes are 3/4 out for 1 down in the firmest soil, 1 for 1 "
        "in the middling, 1 1/2 for 1 in the loosest. What soil yours is, a competent person has to say."
    ): (
        "En fosos de menos de 20 ft (6 m), los taludes más empinados son 3/4 hacia fuera por 1 hacia abajo en el "
        "suelo más firme, 1 por 1 en el medio, 1 1/2 por 1 en el más suelto. Qué suelo es el tuyo debe decirlo "
        "una persona competente."
    ),
    (
        "Paint from before 1978 may hold lead, on salvaged windows, doors and boards too. Do not dry-sand, burn "
        "or torch it; have it tested, and keep children away from the dust."
    ): (
        "La pintura anterior a 1978 puede tener plomo, también en ventanas, puertas y tablas recuperadas. No la "
        "lijes en seco ni la quemes; haz que la analicen y aleja a los niños del polvo."
    ),
    (
        "Insulation, surfacing and vinyl or asphalt flooring from buildings up to 1980 is taken to hold asbestos "
        "until tested; putty and sealant of old windows may too. Leave it alone and ask a licensed firm."
    ): (
        "Aislamientos, revestimientos y suelos de vinilo o asfalto de edificios de hasta 1980 se dan por "
        "amiantados hasta analizarlos; la masilla de ventanas viejas también puede tenerlo. No lo toques y "
        "pregunta a una empresa autorizada."
    ),
    (
        "Old glass is seldom safety glass. One code asks for it where a pane is over 9 ft2 with its bottom under "
        "18 in, its top over 36 in and a walkway within 36 in; and beside doors, within 24 in of them and under "
        "60 in from the floor. Local code decides."
    ): (
        "El vidrio viejo rara vez es de seguridad. Una norma lo exige cuando un paño pasa de 9 ft² (0,84 m²), su "
        "borde inferior está por debajo de 18 in (46 cm), el superior por encima de 36 in (91 cm) y hay un paso "
        "a menos de 36 in (91 cm); y junto a puertas, a menos de 24 in (61 cm) de ellas y por debajo de 60 in "
        "(152 cm) del suelo. Deciden las normas locales."
    ),
    (
        "Treated timber, old treated timber above all, may hold arsenic. Never burn, compost or mulch it or its "
        "sawdust; wear a mask and gloves when sawing."
    ): (
        "La madera tratada, sobre todo la vieja, puede tener arsénico. No la quemes ni la uses de compost o "
        "acolchado, ni su serrín; lleva mascarilla y guantes al serrar."
    ),
    ("Falls from roofs and ladders kill. Use a scaffold or a tied ladder and a harness, and do not work in wind."): (
        "Las caídas desde tejados y escaleras matan. Usa un andamio o una escalera atada y un arnés, y no "
        "trabajes con viento."
    ),
    (
        "The plumbing code sets the least slope of a drain: one has 1/4 in per ft for pipes up to 2 1/2 in, 1/8 "
        "in from 3 to 6 in and 1/16 in from 8 in on. Ask for yours before laying."
    ): (
        "Las normas de fontanería fijan la pendiente mínima: una pide 1/4 in por ft (2,1 %) en tubos de hasta 2 "
        "1/2 in, 1/8 in (1 %) de 3 a 6 in y 1/16 in (0,5 %) desde 8 in. Pregunta la tuya antes de colocar."
    ),
    ("Rain off a roof is not drinking water unless it is treated and tested, and some places limit collecting it."): (
        "La lluvia de un tejado no es potable si no se trata y analiza, y en algunos sitios se limita recogerla."
    ),
    (
        "Paints and solvents give off fumes and burn easily; oily rags can catch fire by themselves. Air the room well."
    ): (
        "Pinturas y disolventes desprenden vapores y arden con facilidad; los trapos con aceite pueden prenderse "
        "solos. Ventila bien la habitación."
    ),
    "5% for footings, columns and beams": "5 % en zapatas, pilares y vigas",
    "8% for slabs": "8 % en losas",
    "10% for the foundation and slab of a small building": "10 % en la cimentación y la losa de un edificio pequeño",
    "10% for ends and bad wood": "10 % por puntas y madera mala",
    "10% for laps and waste, where laps are not counted": "10 % por solapes y merma, si los solapes no se cuentan",
    "5% for breakage": "5 % por roturas",
    "5% for breakage, an old rule for brick; the newer handbook asks for some and names none": (
        "5 % por roturas, una vieja regla para ladrillo; el manual más nuevo pide algo y no da cifra"
    ),
    "5% to 8% for shingles": "5 % a 8 % en tejas planas",
}
