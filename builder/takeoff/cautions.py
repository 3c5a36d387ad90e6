"""What can hurt or go wrong, said once, with whose rule or finding it is and how well that is known.

Figures seen in the source itself name it; figures seen where somebody quotes it say "as quoted by"; figures nobody
has looked up say "from memory"; the trade's habits say "common practice, no source".
"""

from __future__ import annotations

from builder.takeoff.records import Caution
from builder.takeoff.text import Text

COMMON = Text("common practice, no source")

NOT_A_DESIGN = Caution(
    Text(
        "A take-off is for buying materials; it is not a design. Ask the building office what the local code"
        " and permits demand, and a licensed professional for anything that carries a load."
    ),
    COMMON,
)
STRUCTURE = Caution(
    Text(
        "Footings, walls, reinforcement, posts, openings and roofs carry loads from snow, wind, frost and"
        " earthquakes. Their sizes are for a licensed engineer and the local code; this only counts what they take."
    ),
    COMMON,
)
WET_CONCRETE = Caution(
    Text(
        "Wet concrete and mortar burn. They are strongly alkaline (pH 12 to 13, skin is 4 to 5.5), and a burn"
        " can grow for hours before it hurts. Wear waterproof gloves, boots and eye protection, wash splashes off"
        " at once and change wet clothes; see a doctor about any burn."
    ),
    Text("National Precast Concrete Association, articles on cement burns, 2010 and 2016"),
)
SILICA = Caution(
    Text(
        "Cutting, drilling and grinding concrete, block, brick or stone, and tipping dry mix, makes silica dust"
        " that scars the lungs. Cut wet and outdoors and wear a fitted respirator. The limit at work is"
        " 50 micrograms in a cubic metre of air over 8 hours."
    ),
    Text("OSHA 29 CFR 1926.1153, as quoted by a university safety page"),
)
COLD = Caution(
    Text(
        "Concrete needs protection from the cold as soon as the air has been, or may be, below 40 F (5 C) while"
        " it cures. Never pour on frozen ground."
    ),
    Text("American Concrete Institute, definition of cold weather concreting"),
)
CURING = Caution(
    Text(
        "Concrete goes on hardening for weeks: a guide specification has it kept moist for 7 to 21 days, by the"
        " cement used. Follow the bag, and ask before loading it early."
    ),
    Text("Unified Facilities Guide Specification 03301A, paragraph 3.5, whose days are options to choose from"),
)
FROST = Caution(
    Text(
        "Footings go below the frost line, or are protected from frost, and 12 in or more into undisturbed"
        " ground. The frost line is set by the local code: ask for it before digging."
    ),
    Text("International Residential Code R403.1.4, as quoted by a building code forum"),
)
FOOTING_SIZE = Caution(
    Text(
        "How wide and thick a footing has to be depends on the soil and the building, and the local code sets it:"
        " one edition asks for 6 in thick at least, and for 2 in or more beyond the wall on each side, but no"
        " more than the footing is thick."
    ),
    Text("International Residential Code R403.1.1, an older edition, as quoted in course notes"),
)
CALL = Caution(
    Text(
        "Before any digging, also for a post, have the buried cables and pipes marked: in the United States call"
        " or file with 811 some business days ahead, elsewhere the local service. Wait for every owner's answer"
        " and dig by hand near the marks."
    ),
    Text("the 811 programme, as quoted by a regional gas association"),
)
TRENCH_WALLS = Caution(
    Text(
        "Trench and pit walls fall in without warning and bury people. Slope them back or shore them, keep the"
        " spoil away from the edge and never work in one alone. At work they are protected from 5 ft deep on;"
        " shallower ones have killed too."
    ),
    Text("OSHA 29 CFR 1926.652(a), from memory"),
)
SIDE_SLOPES = Caution(
    Text(
        "For pits less than 20 ft deep the steepest slopes are 3/4 out for 1 down in the firmest soil, 1 for 1 in"
        " the middling, 1 1/2 for 1 in the loosest. What soil yours is, a competent person has to say."
    ),
    Text("OSHA 29 CFR 1926 Subpart P Appendix B, Table B-1, as quoted by a copy on the web"),
)
LEAD = Caution(
    Text(
        "Paint from before 1978 may hold lead, on salvaged windows, doors and boards too. Do not dry-sand, burn or"
        " torch it; have it tested, and keep children away from the dust."
    ),
    Text("40 CFR 745.83 and the EPA's answers on it"),
)
ASBESTOS = Caution(
    Text(
        "Insulation, surfacing and vinyl or asphalt flooring from buildings up to 1980 is taken to hold asbestos"
        " until tested; putty and sealant of old windows may too. Leave it alone and ask a licensed firm."
    ),
    Text("OSHA 29 CFR 1926.1101, as quoted by a university safety page; putty: common practice, no source"),
)
GLAZING = Caution(
    Text(
        "Old glass is seldom safety glass. One code asks for it where a pane is over 9 ft2 with its bottom under"
        " 18 in, its top over 36 in and a walkway within 36 in; and beside doors, within 24 in of them and under"
        " 60 in from the floor. Local code decides."
    ),
    Text("International Residential Code R308.4.2 and R308.4.3 (2015), as quoted by a copy on the web"),
)
TREATED = Caution(
    Text(
        "Treated timber, old treated timber above all, may hold arsenic. Never burn, compost or mulch it or its"
        " sawdust; wear a mask and gloves when sawing."
    ),
    Text(
        "EPA on CCA lumber, as quoted by a timber association and a forestry service; mask: common practice, no source"
    ),
)
HEIGHT = Caution(
    Text("Falls from roofs and ladders kill. Use a scaffold or a tied ladder and a harness, and do not work in wind."),
    COMMON,
)
DRAIN_SLOPE = Caution(
    Text(
        "The plumbing code sets the least slope of a drain: one has 1/4 in per ft for pipes up to 2 1/2 in, 1/8 in"
        " from 3 to 6 in and 1/16 in from 8 in on. Ask for yours before laying."
    ),
    Text("International Plumbing Code Table 704.1, as adopted by the city of Chicago"),
)
RAIN = Caution(
    Text("Rain off a roof is not drinking water unless it is treated and tested, and some places limit collecting it."),
    COMMON,
)
FUMES = Caution(
    Text(
        "Paints and solvents give off fumes and burn easily; oily rags can catch fire by themselves. Air the room well."
    ),
    COMMON,
)

CONCRETE = (NOT_A_DESIGN, STRUCTURE, WET_CONCRETE, SILICA, COLD, CURING)
MASONRY = (NOT_A_DESIGN, STRUCTURE, WET_CONCRETE, SILICA, COLD)
DIGGING = (NOT_A_DESIGN, CALL, TRENCH_WALLS)
TIMBER = (NOT_A_DESIGN, TREATED, LEAD)
