"""Spanish: take-offs, what goes in, what comes out, and the steps between. English is the key."""

from __future__ import annotations

from builder.pages.languages import Catalogue

TAKEOFF: Catalogue = {
    "Take-offs": "Mediciones",
    (
        "A take-off is for buying materials; it is not a design. Sizes, depths and reinforcement are set by "
        "local code, the drawings and whoever is licensed to make them."
    ): (
        "Una medición sirve para comprar materiales; no es un proyecto. Medidas, profundidades y armado los "
        "fijan las normas locales, los planos y quien está titulado para hacerlos."
    ),
    "What each figure means": "Qué significa cada cifra",
    (
        "For every line, episode, phase and the whole build: paid + brought in = job cost + in stock + reusable "
        "+ elsewhere."
    ): (
        "Para cada partida, episodio, fase y toda la obra: pagado + aportado = coste de obra + en existencias + "
        "reutilizable + para otras cosas."
    ),
    "Cautions": "Precauciones",
    "What follows is no instruction. Check local code and permits, and ask a licensed professional.": (
        "Lo que sigue no son instrucciones. Comprueba normas y permisos locales y pregunta a un profesional titulado."
    ),
    "How every figure on this site is worked out": "Cómo se calcula cada cifra de este sitio",
    "Put in:": "Datos:",
    "The whole working": "El cálculo completo",
    "Proven: nothing better exists.": "Demostrado: no hay nada mejor.",
    "The search stopped early; nothing can be better than {bound}.": (
        "La búsqueda se detuvo antes de acabar; nada puede ser mejor que {bound}."
    ),
    "Planned, bought, used and left": "Previsto, comprado, usado y sobrante",
    "Bought": "Comprado",
    "Left": "Queda",
    "The allowance was off by": "El margen falló por",
    "{amount} too much": "{amount} de sobra",
    "{amount} too little": "faltaron {amount}",
    "nothing": "nada",
    "How to cut the boards": "Cómo cortar las tablas",
    "{n} boards of {length}: {pieces}": {
        "one": "{n} tabla de {length}: {pieces}",
        "many": "{n} de tablas de {length}: {pieces}",
        "other": "{n} tablas de {length}: {pieces}",
    },
    "What goes into the wall": "Lo que va en la pared",
    "A wall of {length} takes {units}.": "En una pared de {length} caben {units}.",
    "given in plan.yaml": "dado en plan.yaml",
    "unless it is given": "si no se indica otra cosa",
    "none is added unless waste is given": "no se añade nada si no se da la merma",
    "none is added unless it is given; 10% to 20% for crushed stone is common practice, no source": (
        "no se añade nada si no se da; del 10 % al 20 % en piedra machacada es lo habitual, sin fuente"
    ),
    "rounded up: only whole ones are sold": "redondeado hacia arriba: solo se venden enteros",
    "rounded up: the last load is a load": "redondeado hacia arriba: el último viaje es un viaje",
    "{volume} in cubic yards": "{volume} en yardas cúbicas",
    "27 ft3 to the cubic yard": "27 ft³ son una yarda cúbica",
    "round up": "redondeo hacia arriba",
    "larger of": "el mayor de",
    "square root": "raíz cuadrada",
    "tangent": "tangente",
    "yes": "sí",
    "no": "no",
    "Level pad": "Explanada",
    "Pit": "Foso",
    "Trench": "Zanja",
    "Drain run": "Tramo de drenaje",
    "Gravel bed": "Lecho de grava",
    "Strip footing": "Zapata corrida",
    "Slab": "Losa",
    "Round pier": "Pilar redondo",
    "Reinforcing bar": "Barra de armado",
    "Block wall": "Muro de bloques",
    "Brick wall": "Muro de ladrillo",
    "Studs at a spacing": "Montantes a intervalos",
    "Boards by the board foot": "Tablas por pies tablares",
    "Cut list": "Lista de corte",
    "Roof": "Tejado",
    "Rainwater": "Agua de lluvia",
    "Windows in walls": "Ventanas en paredes",
    "Finish": "Acabado",
    "length": "longitud",
    "width": "anchura",
    "height": "altura",
    "depth": "profundidad",
    "thickness": "grosor",
    "diameter": "diámetro",
    "count": "cantidad",
    "volume": "volumen",
    "volume with waste": "volumen con merma",
    "weight": "peso",
    "weight with waste": "peso con merma",
    "weight to carry": "peso que cargar",
    "waste": "merma",
    "bag": "saco",
    "bag yield": "rendimiento por saco",
    "bags": "sacos",
    "bags before rounding": "sacos antes de redondear",
    "fall": "desnivel",
    "slope": "pendiente",
    "rise": "subida",
    "swell": "esponjamiento",
    "truck": "carga por viaje",
    "cut volume": "desmonte",
    "loose volume": "volumen suelto",
    "loose volume with waste": "volumen suelto con merma",
    "loads": "viajes",
    "loads before rounding": "viajes antes de redondear",
    "half of the full depth: the cut is a wedge, nothing at the low side": (
        "la mitad de la profundidad total: el desmonte es una cuña, nada en el lado bajo"
    ),
    "side slope": "talud",
    "workspace": "espacio de trabajo",
    "length at the bottom": "longitud en el fondo",
    "width at the bottom": "anchura en el fondo",
    "area of the bottom": "superficie del fondo",
    "area half way up": "superficie a media altura",
    "area of the top": "superficie de arriba",
    "average end area volume": "volumen por media de áreas",
    "prismoidal formula": "fórmula del prismatoide",
    "average end area, the rougher rule: never less than the prismoidal volume": (
        "media de las áreas, la regla más tosca: nunca menos que el volumen del prismatoide"
    ),
    "pipe diameter": "diámetro del tubo",
    "stone volume": "volumen de piedra",
    "stone volume with waste": "volumen de piedra con merma",
    "the trench filled with stone, less the pipe": "la zanja llena de piedra, menos el tubo",
    "density": "densidad",
    "compaction": "compactación",
    "what to order: it lies looser on the truck than in the compacted bed": (
        "lo que hay que pedir: en el camión va más suelto que en el lecho compactado"
    ),
    "footing width": "anchura de zapata",
    "cross walls": "muros transversales",
    "centre line": "línea central",
    "along the middle of the footing, so that no corner counts twice": (
        "por el medio de la zapata, para que ninguna esquina cuente dos veces"
    ),
    "bar": "barra",
    "bars": "barras",
    "runs": "tramos",
    "lap": "solape",
    "laps": "solapes",
    "stock length": "longitud comercial",
    "bar diameter": "diámetro de la barra",
    "weight per length": "peso por longitud",
    "total length": "longitud total",
    "length of one lap": "longitud de un solape",
    "no run is longer than a bar, so nothing is lapped": (
        "ningún tramo es más largo que una barra, así que no hay solapes"
    ),
    "without laps: stock_length is not given": "sin solapes: no se da stock_length",
    "one lap fewer than the bars in each run": "un solape menos que barras en cada tramo",
    "bars by length": "barras por longitud",
    "bars by length before rounding": "barras por longitud antes de redondear",
    "bars by cutting": "barras por corte",
    "whole bars in the runs, and the bars that the ends are cut from": (
        "barras enteras de los tramos y las barras de las que se cortan los finales"
    ),
    "whichever is more: enough length, and long enough pieces": (
        "lo que sea más: longitud suficiente y piezas bastante largas"
    ),
    "courses": "hiladas",
    "openings": "huecos",
    "block length": "longitud del bloque",
    "block height": "altura del bloque",
    "corners": "esquinas",
    "blocks per mortar bag": "bloques por saco de mortero",
    "filled cores": "celdas rellenas",
    "core volume": "volumen de una celda",
    "net area": "superficie neta",
    "blocks": "bloques",
    "blocks before rounding": "bloques antes de redondear",
    "half blocks": "medios bloques",
    "half blocks, before rounding": "medios bloques, antes de redondear",
    "half a block at each corner in each course; they are among the blocks": (
        "medio bloque en cada esquina de cada hilada; están entre los bloques"
    ),
    "face of the courses less openings": "cara de las hiladas menos los huecos",
    "only whole courses are laid": "solo se colocan hiladas enteras",
    "mortar bags": "sacos de mortero",
    "mortar bags before rounding": "sacos de mortero antes de redondear",
    "grout volume": "hormigón de relleno",
    "grout volume with waste": "hormigón de relleno con merma",
    "all openings are taken off, whatever their size (NCMA TEK 14, 1969)": (
        "se descuentan todos los huecos, sea cual sea su tamaño (NCMA TEK 14, 1969)"
    ),
    "brick length": "longitud del ladrillo",
    "brick height": "altura del ladrillo",
    "joint": "junta",
    "mortar per thousand": "mortero por millar",
    "per area": "por superficie",
    "bricks": "ladrillos",
    "net bricks": "ladrillos netos",
    "bricks before rounding": "ladrillos antes de redondear",
    "mortar volume": "volumen de mortero",
    "mortar volume with waste": "volumen de mortero con merma",
    "spacing": "separación",
    "closed": "cerrado",
    "studs per corner": "montantes por esquina",
    "spaces": "espacios",
    "net studs": "montantes netos",
    "studs before rounding": "montantes antes de redondear",
    "one more than there are spaces, for the end": "uno más que espacios, para el final",
    "as many as there are spaces: the wall closes on itself": (
        "tantos como espacios: la pared se cierra sobre sí misma"
    ),
    "pieces": "piezas",
    "piece {number}": "pieza {number}",
    "less than 1 in thick counts as 1 in": "menos de 1 in de grosor cuenta como 1 in",
    "board feet": "pies tablares",
    "board feet with waste": "pies tablares con merma",
    "stock": "longitudes comerciales",
    "unit cost": "precio unitario",
    "kerf": "ancho de corte",
    "boards": "tablas",
    "boards of {length}": "tablas de {length}",
    "boards of each length": "tablas de cada longitud",
    "boards of each length × unit cost": "tablas de cada longitud × precio unitario",
    "boards of each length × length": "tablas de cada longitud × longitud",
    "cost": "coste",
    "offcut": "retales",
    "all pieces": "todas las piezas",
    "cuts between pieces": "cortes entre piezas",
    "from the cutting plan": "del plan de corte",
    "no plan can do with fewer: proven": "ningún plan necesita menos: demostrado",
    "no plan can be cheaper: proven": "ningún plan es más barato: demostrado",
    "the search stopped early; nobody can do with less than {bound}": (
        "la búsqueda se detuvo antes de acabar; nadie puede hacerlo con menos de {bound}"
    ),
    "what is left of the boards, the last cut of each board not taken off": (
        "lo que queda de las tablas, sin quitar el último corte de cada una"
    ),
    "span": "luz",
    "overhang": "alero",
    "sides": "faldones",
    "run": "proyección horizontal",
    "half the span, and the overhang": "la mitad de la luz y el alero",
    "the whole span, and the overhang": "toda la luz y el alero",
    "rafter": "cabio",
    "area with waste": "superficie con merma",
    "squares": "cuadros de tejado",
    "a square is 100 ft2": "un cuadro de tejado son 100 ft²",
    "roof area": "superficie del tejado",
    "rainfall": "lluvia",
    "efficiency": "eficiencia",
    "walls": "paredes",
    "clear length": "longitud libre",
    "units": "ventanas y puertas",
    "post": "poste",
    "placed": "colocadas",
    "left over": "sobrantes",
    "glass": "vidrio",
    "from the layout": "de la disposición",
    "no layout has more glass: proven": "ninguna disposición tiene más vidrio: demostrado",
    "the search stopped early; no layout can have more than {bound}": (
        "la búsqueda se detuvo antes de acabar; ninguna disposición puede tener más de {bound}"
    ),
    "width × height of each one placed": "anchura × altura de cada una colocada",
    "width of each one placed": "anchura de cada una colocada",
    "coverage": "rendimiento",
    "coats": "manos",
    "amount": "cantidad",
    "amount with waste": "cantidad con merma",
    "amount before rounding": "cantidad antes de redondear",
}
