"""French: what can hurt, and what handbooks add. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

CAUTIONS: Catalogue = {
    (
        "Wet concrete and mortar burn skin, slowly and without hurting at first: gloves, boots, eyes covered, water by."
    ): (
        "Le béton et le mortier frais brûlent la peau, lentement et d’abord sans douleur : gants, bottes, yeux "
        "couverts, de l’eau à portée."
    ),
    ("Dust of cut concrete, stone and block harms the lungs for good: cut wet, and wear a mask that is made for it."): (
        "La poussière de béton, de pierre et de bloc coupés abîme les poumons pour toujours : coupez à l’eau et "
        "portez un masque fait pour cela."
    ),
    "The walls of a trench can fall in without a sign. Ask before you dig where pipes and cables lie.": (
        "Les parois d’une tranchée peuvent s’effondrer sans prévenir. Demandez avant de creuser où passent "
        "tuyaux et câbles."
    ),
    ("Old paint may hold lead, old boards and sheets asbestos: have them looked at before you sand or break them."): (
        "Les vieilles peintures peuvent contenir du plomb, les vieilles plaques de l’amiante : faites-les "
        "examiner avant de poncer ou de casser."
    ),
    "Glass near a door, near the floor or in a large pane has to be safety glass in most places.": (
        "Près d’une porte, près du sol ou en grand vitrage, le verre doit presque partout être de sécurité."
    ),
    "Treated timber is never burnt. Its dust is not breathed.": (
        "Le bois traité ne se brûle jamais. Sa poussière ne se respire pas."
    ),
    "Electricity: what goes into the ground or a wall is a licensed electrician's work.": (
        "Électricité : ce qui va dans le sol ou dans un mur est l’affaire d’un électricien agréé."
    ),
    "Working at height: a ladder that cannot slip, somebody on the ground, and nobody up there in wind.": (
        "Travail en hauteur : une échelle qui ne peut pas glisser, quelqu’un au sol, et personne là-haut par "
        "grand vent."
    ),
    (
        "A take-off is for buying materials; it is not a design. Ask the building office what the local code and "
        "permits demand, and a licensed professional for anything that carries a load."
    ): (
        "Un métré sert à acheter les matériaux ; ce n’est pas un projet. Demandez au service d’urbanisme ce "
        "qu’exigent règles et permis locaux, et à un professionnel agréé pour tout ce qui porte une charge."
    ),
    (
        "Footings, walls, reinforcement, posts, openings and roofs carry loads from snow, wind, frost and "
        "earthquakes. Their sizes are for a licensed engineer and the local code; this only counts what they "
        "take."
    ): (
        "Semelles, murs, armatures, poteaux, ouvertures et toits portent les charges de la neige, du vent, du "
        "gel et des séismes. Leurs dimensions reviennent à un ingénieur agréé et aux règles locales ; ici on ne "
        "fait que compter ce qu’il leur faut."
    ),
    (
        "Wet concrete and mortar burn. They are strongly alkaline (pH 12 to 13, skin is 4 to 5.5), and a burn "
        "can grow for hours before it hurts. Wear waterproof gloves, boots and eye protection, wash splashes off "
        "at once and change wet clothes; see a doctor about any burn."
    ): (
        "Le béton et le mortier frais brûlent. Ils sont très alcalins (pH 12 à 13, la peau 4 à 5,5), et une "
        "brûlure peut s’étendre des heures avant de faire mal. Portez gants étanches, bottes et protection des "
        "yeux, rincez aussitôt les éclaboussures et changez les vêtements mouillés ; voyez un médecin pour toute "
        "brûlure."
    ),
    (
        "Cutting, drilling and grinding concrete, block, brick or stone, and tipping dry mix, makes silica dust "
        "that scars the lungs. Cut wet and outdoors and wear a fitted respirator. The limit at work is 50 "
        "micrograms in a cubic metre of air over 8 hours."
    ): (
        "Couper, percer et meuler béton, blocs, briques ou pierre, et verser du mélange sec, fait une poussière "
        "de silice qui laisse des cicatrices dans les poumons. Coupez à l’eau et dehors, avec un masque "
        "respiratoire ajusté. La limite au travail est de 50 microgrammes par mètre cube d’air sur 8 heures."
    ),
    (
        "Concrete needs protection from the cold as soon as the air has been, or may be, below 40 F (5 C) while "
        "it cures. Never pour on frozen ground."
    ): (
        "Le béton doit être protégé du froid dès que l’air est passé, ou peut passer, sous 5 °C (40 °F) pendant "
        "sa prise. Ne coulez jamais sur un sol gelé."
    ),
    (
        "Concrete goes on hardening for weeks: a guide specification has it kept moist for 7 to 21 days, by the "
        "cement used. Follow the bag, and ask before loading it early."
    ): (
        "Le béton durcit pendant des semaines : un devis type le fait garder humide 7 à 21 jours, selon le "
        "ciment. Suivez le sac, et demandez avant de le charger tôt."
    ),
    (
        "Footings go below the frost line, or are protected from frost, and 12 in or more into undisturbed "
        "ground. The frost line is set by the local code: ask for it before digging."
    ): (
        "Les semelles descendent sous la limite de gel, ou en sont protégées, et d’au moins 12 in (30 cm) dans "
        "un sol non remué. La profondeur hors gel est fixée par les règles locales : demandez-la avant de "
        "creuser."
    ),
    (
        "How wide and thick a footing has to be depends on the soil and the building, and the local code sets "
        "it: one edition asks for 6 in thick at least, and for 2 in or more beyond the wall on each side, but no "
        "more than the footing is thick."
    ): (
        "La largeur et l’épaisseur d’une semelle dépendent du sol et du bâtiment, et les règles locales les "
        "fixent : une édition demande au moins 6 in (15 cm) d’épaisseur et 2 in (5 cm) ou plus de débord de "
        "chaque côté du mur, sans dépasser l’épaisseur de la semelle."
    ),
    (
        "Before any digging, also for a post, have the buried cables and pipes marked: in the United States call "
        "or file with 811 some business days ahead, elsewhere the local service. Wait for every owner's answer "
        "and dig by hand near the marks."
    ): (
        "Avant de creuser, même pour un poteau, faites repérer câbles et tuyaux enterrés : aux États-Unis par le "
        "811 quelques jours ouvrés avant, ailleurs par le service local. Attendez la réponse de chaque "
        "exploitant et creusez à la main près des repères."
    ),
    (
        "Trench and pit walls fall in without warning and bury people. Slope them back or shore them, keep the "
        "spoil away from the edge and never work in one alone. At work they are protected from 5 ft deep on; "
        "shallower ones have killed too."
    ): (
        "Les parois de tranchées et de fouilles s’effondrent sans prévenir et ensevelissent. Talutez ou étayez, "
        "gardez les déblais loin du bord et n’y travaillez jamais seul. Au travail, on les protège dès 5 ft (1,5 "
        "m) de profondeur ; de moins profondes ont tué aussi."
    ),
    (
        "For pits less than 20 ft deep the steepest slopes are 3/4 out for 1 down in the firmest soil, 1 for 1 "
        "in the middling, 1 1/2 for 1 in the loosest. What soil yours is, a competent person has to say."
    ): (
        "Pour les fouilles de moins de 20 ft (6 m), les talus les plus raides sont de 3/4 pour 1 dans le sol le "
        "plus ferme, 1 pour 1 dans le moyen, 1 1/2 pour 1 dans le plus meuble. Quel est le vôtre, une personne "
        "compétente doit le dire."
    ),
    (
        "Paint from before 1978 may hold lead, on salvaged windows, doors and boards too. Do not dry-sand, burn "
        "or torch it; have it tested, and keep children away from the dust."
    ): (
        "Une peinture d’avant 1978 peut contenir du plomb, aussi sur fenêtres, portes et planches récupérées. Ne "
        "la poncez pas à sec, ne la brûlez pas ; faites-la analyser, et tenez les enfants loin de la poussière."
    ),
    (
        "Insulation, surfacing and vinyl or asphalt flooring from buildings up to 1980 is taken to hold asbestos "
        "until tested; putty and sealant of old windows may too. Leave it alone and ask a licensed firm."
    ): (
        "Isolants, enduits et sols en vinyle ou asphalte de bâtiments jusqu’à 1980 sont présumés amiantés "
        "jusqu’à analyse ; le mastic des vieilles fenêtres peut l’être aussi. N’y touchez pas et demandez à une "
        "entreprise agréée."
    ),
    (
        "Old glass is seldom safety glass. One code asks for it where a pane is over 9 ft2 with its bottom under "
        "18 in, its top over 36 in and a walkway within 36 in; and beside doors, within 24 in of them and under "
        "60 in from the floor. Local code decides."
    ): (
        "Le vieux verre est rarement de sécurité. Une règle l’exige quand un vitrage dépasse 9 ft² (0,84 m²), "
        "que son bas est sous 18 in (46 cm), son haut au-dessus de 36 in (91 cm) et qu’un passage est à moins de "
        "36 in (91 cm) ; et près des portes, à moins de 24 in (61 cm) d’elles et sous 60 in (152 cm) du sol. Les "
        "règles locales décident."
    ),
    (
        "Treated timber, old treated timber above all, may hold arsenic. Never burn, compost or mulch it or its "
        "sawdust; wear a mask and gloves when sawing."
    ): (
        "Le bois traité, surtout ancien, peut contenir de l’arsenic. Ne le brûlez jamais, ne le compostez ni ne "
        "l’épandez en paillis, pas plus que sa sciure ; portez masque et gants pour le scier."
    ),
    ("Falls from roofs and ladders kill. Use a scaffold or a tied ladder and a harness, and do not work in wind."): (
        "Les chutes de toits et d’échelles tuent. Prenez un échafaudage ou une échelle attachée et un harnais, "
        "et ne travaillez pas par grand vent."
    ),
    (
        "The plumbing code sets the least slope of a drain: one has 1/4 in per ft for pipes up to 2 1/2 in, 1/8 "
        "in from 3 to 6 in and 1/16 in from 8 in on. Ask for yours before laying."
    ): (
        "Les règles de plomberie fixent la pente minimale : l’une veut 1/4 in par ft (2,1 %) pour les tuyaux "
        "jusqu’à 2 1/2 in, 1/8 in (1 %) de 3 à 6 in et 1/16 in (0,5 %) dès 8 in. Demandez la vôtre avant de "
        "poser."
    ),
    ("Rain off a roof is not drinking water unless it is treated and tested, and some places limit collecting it."): (
        "La pluie d’un toit n’est pas potable sans traitement ni analyse, et certains endroits en limitent la collecte."
    ),
    (
        "Paints and solvents give off fumes and burn easily; oily rags can catch fire by themselves. Air the room well."
    ): (
        "Peintures et solvants dégagent des vapeurs et brûlent facilement ; les chiffons huileux peuvent "
        "s’enflammer seuls. Aérez bien la pièce."
    ),
    "5% for footings, columns and beams": "5 % pour semelles, poteaux et poutres",
    "8% for slabs": "8 % pour les dalles",
    "10% for the foundation and slab of a small building": ("10 % pour les fondations et la dalle d’un petit bâtiment"),
    "10% for ends and bad wood": "10 % pour les bouts et le mauvais bois",
    "10% for laps and waste, where laps are not counted": (
        "10 % pour recouvrements et pertes, quand les recouvrements ne sont pas comptés"
    ),
    "5% for breakage": "5 % pour la casse",
    "5% for breakage, an old rule for brick; the newer handbook asks for some and names none": (
        "5 % pour la casse, vieille règle pour la brique ; le manuel plus récent en demande sans donner de chiffre"
    ),
    "5% to 8% for shingles": "5 % à 8 % pour les bardeaux",
}
